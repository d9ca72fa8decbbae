import { atHead, check, commonPractice } from '../../../checks/check.ts'
import { nextReading } from '../fixes.ts'
import { moveWithoutReading } from '../plans/moves.ts'

export default check({
  id: 'alignment/no-reading-after-move',
  severity: 'warning',
  title: 'Move that no reading follows',
  why: 'Nuts creep as they are tightened and a foot can hang: only the next reading shows where a move has put the machine. The last reading was taken before the move and no longer holds.',
  source: commonPractice('common practice, no source'),
  on: 'move',
  plan: 'goes-on',
  fires: `drive main {
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-1 { done: 2026-03-04  fwd: up 2 flats }
# ^^^^^^^^^^^^^^^^ No reading follows
}`,
  quiet: `drive main {
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-1 { done: 2026-03-04  fwd: up 2 flats }
  reading dry-2 {
    taken: 2026-03-05
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
}`,
  run: (_facts, lookup) => {
    const { block } = lookup
    return block.parent && moveWithoutReading(block.parent) === block
      ? [
          atHead(block, {
            message: `No reading follows the move after ${block.about?.text}: how the machine stands now is not known.`,
            todo: 'Read the coupling again with everything tight, and add the reading below the move.',
          }),
        ]
      : []
  },
  fixes: (_finding, ground) => nextReading(ground).map((fix) => ({ ...fix, preferred: true })),
})
