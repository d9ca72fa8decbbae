import { block, fact } from '../block.ts'
import { choice, date, text } from '../shape.ts'
import { statuses } from '../status.ts'

export const job = block({
  kind: 'job',
  doc: 'The job that this file is for: vessel, revision and status.',
  heading: 'title',
  within: ['top'],
  many: false,
  facts: {
    vessel: fact(text, 'The vessel, as the yard calls it.', { from: 'draft', example: '"Launch 07"' }),
    revision: fact(text, 'Revision of this file.', { from: 'for-review', example: '"C"' }),
    status: fact(
      choice(statuses),
      'How far the job is. Each status asks for more facts. Without a status, the job counts as `for-review`. `as-built` claims that the install is finished: no error may be open, and each drive needs a reading afloat that is within its limits.',
      { from: 'draft', example: 'draft' },
    ),
    launched: fact(
      date,
      'When the boat was launched. A hull needs a day or two to settle before the coupling is read afloat.',
      { from: 'as-built', example: '2026-03-18' },
    ),
    rules: fact(
      choice(['iso', 'abyc']),
      'Rules for the electrical install: ISO 13297 and 10133, or ABYC E-11 with 33 CFR 183. Tables and factors of the two are never mixed. If not stated, the lower of the two tables and the stricter factors are used.',
      { from: 'for-review', example: 'iso' },
    ),
    'dc-negative': fact(
      choice(['insulated', 'bonded']),
      'Whether the negative of the DC network is insulated from the hull, or bonded to it. In an insulated network fuses and isolators open both poles.',
      { from: 'for-review', example: 'insulated' },
    ),
    screws: fact(
      choice(['outward', 'inward', 'same-hand']),
      'How the screws of two drives turn going ahead, seen from astern. `outward`: right-hand to starboard, left-hand to port. `inward`: the other way round.',
      { example: 'outward' },
    ),
    'show-in': fact(
      choice(['metric', 'inch']),
      'Units of results. If not stated, inch if all readings are written in inches, otherwise metric. Some figures show the other system in brackets.',
      {
        example: 'metric',
      },
    ),
  },
  needs: { draft: ['drive'], 'for-review': ['battery'] },
  // What the boat is to do cannot be reckoned without its hull, and the power table says nothing of it without a service. Where neither is there, a job may
  // be about the alignment or the wiring alone. From `issued` on a propeller is ordered from it: whether it fits hull, motor and bank must be known.
  needsBeside: [
    { kind: 'hull', from: 'for-review', beside: ['service'] },
    { kind: 'service', from: 'for-review', beside: ['hull'] },
    { kind: 'hull', from: 'issued', beside: ['battery', 'propeller'] },
    { kind: 'service', from: 'issued', beside: ['battery', 'propeller'] },
  ],
  example: `job "Survey launch 07: electric repower" {
  vessel:   "Launch 07"
  revision: "C"
  status:   draft
  show-in:  metric
}`,
})
