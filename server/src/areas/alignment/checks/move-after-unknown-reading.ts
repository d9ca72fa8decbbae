import { check, theLanguage } from '../../../checks/check.ts'
import { useNearest } from '../../../checks/fix-text.ts'
import { childrenOf } from '../../../job/model.ts'
import { elide } from '../../../quantity/elide.ts'
import { nearest } from '../../../quantity/nearest.ts'
import { readingBefore } from '../plans/moves.ts'

export default check({
  id: 'alignment/move-after-unknown-reading',
  severity: 'error',
  title: 'Move after an unknown reading',
  why: 'A move belongs after a reading. Without that reading it is not known which readings still show how the machine stands.',
  source: theLanguage,
  on: 'move',
  plan: 'waits',
  fires: `drive main {
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-9 { done: 2026-03-04  fwd: up 2 flats }
#            ^^^^^ dry-1
}`,
  quiet: `drive main {
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-1 { done: 2026-03-04  fwd: up 2 flats }
}`,
  run: (_facts, { block }) => {
    if (!block.about || !block.parent || readingBefore(block)) return []
    const names = childrenOf(block.parent, 'reading').flatMap(({ name }) => name ?? [])
    const near = nearest(block.about.text, names)
    return [
      {
        at: block.about.at,
        message: `The drive has no reading called ${elide(block.about.text)}.`,
        ...(near !== undefined && { detail: `The nearest name is ${near}.` }),
        todo:
          near === undefined
            ? 'Name the reading that the move was planned from, or add that reading.'
            : `Write \`move after ${near}\` if you mean that reading.`,
        found: block.about.text,
        ...(near !== undefined && { data: { nearest: near } }),
      },
    ]
  },
  fixes: ({ at, data }) => useNearest(at, data?.nearest),
})
