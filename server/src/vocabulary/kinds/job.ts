import { block, fact } from '../block.ts'
import { choice, date, text } from '../shape.ts'

export const job = block({
  kind: 'job',
  doc: 'What the file is about: the vessel, its revision and how far it has got.',
  heading: 'title',
  within: ['top'],
  many: false,
  facts: {
    vessel: fact(text, 'The vessel, as the yard calls it.', { example: '"Launch 07"', required: true }),
    revision: fact(text, 'Revision of this file.', { example: '"C"' }),
    status: fact(
      choice(['draft', 'for-review', 'issued', 'as-built']),
      'How far the job has got. `as-built` says that the readings are final: no error may stand open.',
      { example: 'draft' },
    ),
    launched: fact(
      date,
      'When the boat was put in the water: a hull takes a day or two to settle before the coupling is read afloat.',
      { example: '2026-03-18' },
    ),
    'show-in': fact(
      choice(['metric', 'inch']),
      'The units results are shown in; the other units follow in brackets.',
      {
        example: 'metric',
      },
    ),
  },
  example: `job "Survey launch 07: electric repower" {
  vessel:   "Launch 07"
  revision: "C"
  status:   draft
  show-in:  metric
}`,
})
