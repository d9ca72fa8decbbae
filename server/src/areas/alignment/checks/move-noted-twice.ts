import { atHead, check, commonPractice } from '../../../checks/check.ts'
import { takeOut } from '../../../checks/fix-text.ts'
import { elide } from '../../../quantity/elide.ts'
import { repeated } from '../plans/move-twice.ts'
import { isPlanned } from '../plans/moves.ts'

const job = (more: string) => `drive main {
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-1 {
    done: 2026-03-04
    fwd: up 2 flats
  }
${more}
}`

export default check({
  id: 'alignment/move-noted-twice',
  severity: 'warning',
  title: 'The same move noted twice',
  why: 'Two people noted one move, or a block was copied. The log then says twice what was done, and the next reading seems to show half of it. There is no finding if the next reading shows that both moves were made.',
  source: commonPractice('common practice, no source'),
  on: 'move',
  plan: 'waits',
  fires: job(`  move after dry-1 {
# ^^^^^^^^^^^^^^^^ noted twice
    done: 2026-03-04
    fwd: up 2 flats
  }`),
  quiet: job(`  move after dry-1 {
    done: 2026-03-04
    fwd: up 1 flat
  }`),
  run: (_facts, lookup) => {
    const { block } = lookup
    const first = repeated(block, lookup)
    if (!first) return []
    const about = elide(block.about?.text ?? '')
    const wasMade = isPlanned(block) && !isPlanned(first)
    return [
      atHead(block, {
        message: wasMade
          ? `This planned move after ${about} is noted as made as well.`
          : `This move after ${about} is noted twice, with the same feet.`,
        todo: wasMade
          ? 'Delete the planned one. If it is to be made once more, read again first.'
          : 'Delete one of the two if the move was made once. If it was made twice, write both as one move, or give each its own date.',
        related: [{ at: first.head, message: 'noted here before' }],
      }),
    ]
  },
  fixes: (_finding, { block }) =>
    block?.kind === 'move'
      ? [
          {
            title: 'Delete this repeated move',
            edits: [takeOut(block.section, block.node.span)],
            preferred: true,
            leaves: ['alignment/no-reading-after-move', 'alignment/move-planned'],
          },
        ]
      : [],
})
