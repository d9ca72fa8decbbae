import { atHead, check, theLanguage } from '../../../checks/check.ts'
import { addFact, blank } from '../../../checks/fix-text.ts'
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
}`

export default check({
  id: 'alignment/move-planned',
  severity: 'information',
  title: 'Planned move',
  why: 'A move without `done` does not count as made: the plan goes on from the reading before it. If the move was made and nobody wrote `done`, it would be made twice.',
  source: theLanguage,
  on: 'move',
  plan: 'goes-on',
  fires: job('\n# ^^^^^^^^^^^^^^^^ planned'),
  quiet: job('\n    done: 2026-03-04'),
  run: (_facts, lookup) => {
    const { block } = lookup
    return block.about && isPlanned(block) && !readingFollowing(block) && !repeated(block, lookup)
      ? [
          atHead(block, {
            message: `This move after ${elide(block.about.text)} is planned.`,
            detail: block.facts.has('by')
              ? 'It says who made it and not when. It reads as done, and does not count as made.'
              : 'It does not say when it was done, so it does not count as made.',
            todo: 'Write `done` with the day and `by` with who made it once it is made. Then read again.',
            data: { add: 'done' },
          }),
        ]
      : []
  },
  fixes: (_finding, { block, today }) =>
    block?.kind === 'move'
      ? [
          {
            title: 'It was made today',
            edits: [
              addFact(block, 'done', today),
              ...(block.facts.has('by') || block.unread.has('by')
                ? []
                : [addFact(block, 'by', `"${blank}"`)]),
            ],
            leaves: ['alignment/no-reading-after-move', 'alignment/move-misdated', 'job/fact-missing'],
          },
        ]
      : [],
})
