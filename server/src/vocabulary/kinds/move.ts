import { block, fact } from '../block.ts'
import { date, text } from '../shape.ts'
import { footMove } from '../shapes/foot-move.ts'

export const move = block({
  kind: 'move',
  doc: 'What was done to the feet after a reading. Each foot is named as in the bed.',
  heading: 'after',
  within: ['drive'],
  many: true,
  facts: {
    done: fact(date, 'When it was done.', { example: '2026-03-04' }),
    by: fact(text, 'Who did it.', { example: '"fitter 2"' }),
  },
  others: fact(footMove, 'What was done to this foot.', { example: 'up 1 turn 2 flats' }),
  example: 'move after dry-1 { fwd-port: up 2 flats  fwd-stbd: up 2 flats }',
})
