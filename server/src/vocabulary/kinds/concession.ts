import { block, fact } from '../block.ts'
import { date, designation, text } from '../shape.ts'

export const concession = block({
  kind: 'concession',
  doc: 'Accepts one finding, with reason and end date. The finding stays in sight.',
  heading: 'check',
  within: ['top'],
  many: true,
  facts: {
    on: fact(designation, 'What the finding is about: names with dots.', {
      example: 'starboard.dry-2',
      required: true,
    }),
    reason: fact(text, 'Why it is accepted.', { example: '"afloat reading follows launch"' }),
    'granted-by': fact(text, 'Who accepts it.', { example: '"design office"', required: true }),
    until: fact(date, 'Last day on which it holds.', { example: '2026-04-15', required: true }),
  },
  example: `concession alignment/gap-variation-outside {
  on:         starboard.dry-2
  reason:     "afloat reading follows launch"
  granted-by: "design office"
  until:      2026-04-15
}`,
})
