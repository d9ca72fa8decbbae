import { at, check, theLanguage } from '../../../checks/check.ts'
import { misdated } from '../plans/moves.ts'

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
  title: 'Move date contradicts its place in the log',
  why: 'A move comes after the reading it names and before the next one. With another date, it is not known which readings were taken before the move and which after. So no reading is compared with the move, and a mistake would not be found.',
  source: theLanguage,
  on: 'move',
  plan: 'waits',
  needs: { done: 'move.done' },
  fires: job(`2026-03-01
#         ^^^^^^^^^^ before the reading that it follows`),
  quiet: job('2026-03-04'),
  run: ({ done }, { block, blockOf }) => {
    const found = misdated(block)
    if (!found) return []
    const against = blockOf(found.against)
    return [
      at(done, {
        message:
          found.is === 'before'
            ? `This move is dated ${done.value}, before the reading that it follows.`
            : `This move is dated ${done.value}, after the reading that it comes before.`,
        detail: `That reading is ${against.name ?? ''}.`,
        todo: 'Correct the date, or the reading that the move comes after.',
        found: done.value,
        related: [
          {
            at: against.head,
            message: 'the reading',
          },
        ],
      }),
    ]
  },
})
