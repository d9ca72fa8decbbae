import { atHead, check, theLanguage } from '../../../checks/check.ts'
import { addFact, blank, takeOut } from '../../../checks/fix-text.ts'
import { elide } from '../../../quantity/elide.ts'
import { repeated } from '../plans/move-twice.ts'
import { isPlanned, readingFollowing } from '../plans/moves.ts'

const job = (done: string) => `drive main {
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-1 {${done}
    fwd: up 2 flats
  }
  reading dry-2 {
    taken: 2026-03-05
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.78 mm, port 1.78 mm
  }
}`

export default check({
  id: 'alignment/move-not-dated',
  severity: 'warning',
  title: 'Move that may or may not have been made',
  why: 'The move does not say when it was done, and a later reading follows. If the move was made before that reading, the reading must show it. If it was made after it, the machine no longer stands as read. If it was not made, it misleads whoever reads the log. So the plan gives no steps until the log says which.',
  source: theLanguage,
  on: 'move',
  plan: 'waits',
  fires: job('\n# ^^^^^^^^^^^^^^^^ dry-2'),
  quiet: job('\n    done: 2026-03-04'),
  run: (_facts, lookup) => {
    const { block } = lookup
    const next = isPlanned(block) && !repeated(block, lookup) ? readingFollowing(block) : undefined
    return next
      ? [
          atHead(block, {
            message: `This move after ${elide(block.about?.text ?? '')} does not say whether it was made.`,
            detail: `The later reading ${elide(next.name ?? '')} may show the machine before or after it.`,
            todo: 'Write the day as `done`, and `by`. If it was not made, delete it.',
            data: { add: 'done' },
            related: [{ at: next.head, message: 'the later reading' }],
          }),
        ]
      : []
  },
  fixes: (_finding, { block }) =>
    block?.kind === 'move'
      ? [
          {
            title: 'It was made: add the date',
            edits: [addFact(block, 'done', blank)],
            leaves: ['job/fact-missing'],
          },
          {
            title: 'It was not made: delete it',
            edits: [takeOut(block.section, block.node.span)],
          },
        ]
      : [],
})
