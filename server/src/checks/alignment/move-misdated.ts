import { misdated } from '../../plans/alignment-moves.ts'
import { at, check, theLanguage } from '../check.ts'

const job = (done: string) => `drive main {
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-1 {
    done: ${done}
    fwd: up 2 flats
  }
}`

export default check({
  id: 'alignment/move-misdated',
  severity: 'warning',
  title: 'Move whose date contradicts its place in the log',
  why: 'A move comes after the reading it names and before the next one. Where its date says otherwise, it is open which readings show the machine as it was before the move and which as it is now: none is held against the move, and a slip is not seen.',
  source: theLanguage,
  on: 'move',
  plan: 'waits',
  needs: { done: 'move.done' },
  fires: job(`2026-03-01
#         ^^^^^^^^^^ before the reading dry-1`),
  quiet: job('2026-03-04'),
  run: ({ done }, { block }) => {
    const found = misdated(block)
    if (!found) return []
    const name = found.against.name ?? ''
    return [
      at(done, {
        message:
          found.is === 'before'
            ? `By its date, ${done.value}, this move was made before the reading ${name}, and it is written as made after it.`
            : `By its date, ${done.value}, this move was made after the reading ${name}, and it is written as made before it.`,
        todo: 'Correct the date, or the reading that the move comes after.',
        found: done.value,
        related: [
          {
            at: { section: found.against.section, span: found.against.node.headSpan },
            message: 'the reading',
          },
        ],
      }),
    ]
  },
})
