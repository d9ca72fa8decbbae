import { block, fact } from '../block.ts'
import { date, text } from '../shape.ts'
import { footMove } from '../shapes/foot-move.ts'

export const move = block({
  kind: 'move',
  doc: 'What is done to the feet after a reading. Use the names of the feet in the bed. Without `done` the move is planned: it does not count as made, and the reading before it still counts.',
  heading: 'after',
  within: ['drive'],
  many: true,
  perDrive: true,
  isRecord: true,
  facts: {
    done: fact(date, 'When it was done. Leave it out until then: the move is planned.', {
      from: 'as-built',
      example: '2026-03-04',
    }),
    by: fact(text, 'Who did it.', { from: 'as-built', example: '"fitter 2"' }),
  },
  others: fact(footMove, 'What was done to this foot.', { example: 'up 1 turn 2 flats', onBoat: true }),
  example: 'move after dry-1 { done: 2026-03-04  fwd-port: up 2 flats  fwd-stbd: up 2 flats }',
})
