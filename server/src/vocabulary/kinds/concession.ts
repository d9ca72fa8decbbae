import { block, fact } from '../block.ts'
import { date, designation, text } from '../shape.ts'

export const concession = block({
  kind: 'concession',
  doc: 'Accepts one finding, with a reason and an end date. The finding stays visible.',
  heading: 'check',
  within: ['top'],
  many: true,
  facts: {
    on: fact(designation, 'The block that the finding is about: names joined by dots.', {
      from: 'draft',
      example: 'starboard.dry-2',
    }),
    reason: fact(text, 'Why it is accepted.', { example: '"afloat reading follows launch"' }),
    'granted-by': fact(text, 'Who accepts it.', { from: 'draft', example: '"design office"' }),
    until: fact(date, 'Last day on which it is valid.', { from: 'draft', example: '2026-04-15' }),
  },
  example: `concession alignment/gap-variation-outside {
  on:         starboard.dry-2
  reason:     "afloat reading follows launch"
  granted-by: "design office"
  until:      2026-04-15
}`,
})
