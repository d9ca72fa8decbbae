import { repeated } from '../../plans/move-twice.ts'
import { atHead, check, commonPractice } from '../check.ts'
import { takeOut } from '../fix-text.ts'

const job = (more: string) => `drive main {
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-1 {
    fwd: up 2 flats
  }
${more}
}`

export default check({
  id: 'alignment/move-noted-twice',
  severity: 'warning',
  title: 'The same move noted twice',
  why: 'Two people wrote down one move, or a block was copied: the log then says twice as much as was done, and the next reading seems to show that the machine came half the way. Nothing is said where the next reading shows that both were made.',
  source: commonPractice('common practice, no source'),
  on: 'move',
  plan: 'waits',
  fires: job(`  move after dry-1 {
# ^^^^^^^^^^^^^^^^ noted twice
    fwd: up 2 flats
  }`),
  quiet: job(`  move after dry-1 {
    fwd: up 1 flat
  }`),
  run: (_facts, context) => {
    const { block } = context
    const first = repeated(block, context)
    if (!first) return []
    return [
      atHead(block, {
        message: `This move after ${block.about?.text} is noted twice, foot by foot the same.`,
        todo: 'If it was made once, delete one of the two. If it was made twice, write both as one move, or give each its own date.',
        related: [
          { at: { section: first.section, span: first.node.headSpan }, message: 'noted here before' },
        ],
      }),
    ]
  },
  fixes: (_finding, { block }) =>
    block?.kind === 'move'
      ? [
          {
            title: 'Delete this move, noted twice',
            edits: [takeOut(block.section, block.node.span)],
            preferred: true,
            leaves: ['alignment/no-reading-after-move'],
          },
        ]
      : [],
})
