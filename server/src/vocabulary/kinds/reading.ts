import { block, fact } from '../block.ts'
import { amount, date, text, yesNo } from '../shape.ts'
import { angled } from '../shapes/angled.ts'

export const reading = block({
  kind: 'reading',
  doc: 'A reading of the coupling. Readings are never changed afterwards: what was done is a `move`, and the next reading follows.',
  heading: 'name',
  within: ['drive'],
  many: true,
  facts: {
    taken: fact(date, 'When it was taken.', { example: '2026-03-04', required: true }),
    afloat: fact(yesNo, 'Whether the boat was afloat.', { example: 'no' }),
    hot: fact(yesNo, 'Whether the machine was at working heat.', { example: 'no' }),
    gauge: fact(amount('length', { min: 1e-7, max: 1e-3 }), 'Smallest step of the feelers or the gauge.', {
      example: '0.02 mm',
      required: true,
    }),
    gaps: fact(
      angled({ min: 0, max: 0.05 }),
      'Gap between the faces at three or more places round the flange.',
      {
        example: 'top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm',
        required: true,
      },
    ),
    offsets: fact(
      angled({ min: -0.05, max: 0.05 }),
      'How far the rim of the machine flange stands outside the rim of the shaft flange, at three or more places; inside is negative.',
      { example: 'top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm' },
    ),
    by: fact(text, 'Who took it.', { example: '"fitter 2"' }),
    note: fact(text, 'Anything the next reader should know.', { example: '"coupling bolts out"' }),
  },
  example: `reading dry-1 {
  taken:   2026-03-04
  afloat:  no
  gauge:   0.02 mm
  gaps:    top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  offsets: top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm
}`,
})
