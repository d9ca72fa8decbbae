import { childrenOf } from '../../job/model.ts'
import { readingBefore } from '../../plans/alignment-moves.ts'
import { nearest } from '../../quantity/nearest.ts'
import { check, theLanguage } from '../check.ts'
import { useNearest } from '../fix-text.ts'

export default check({
  id: 'alignment/move-after-unknown-reading',
  severity: 'error',
  title: 'Move after a reading that is not there',
  why: 'A move is told from the reading it comes after. Where that is not in the drive, it cannot be seen which readings still tell how the machine stands.',
  source: theLanguage,
  on: 'move',
  plan: 'waits',
  fires: `drive main {
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-9 { fwd: up 2 flats }
#            ^^^^^ dry-1
}`,
  quiet: `drive main {
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-1 { fwd: up 2 flats }
}`,
  run: (_facts, { block }) => {
    if (!block.about || !block.parent || readingBefore(block)) return []
    const names = childrenOf(block.parent, 'reading').flatMap(({ name }) => name ?? [])
    const near = nearest(block.about.text, names)
    return [
      {
        at: block.about.at,
        message: `The drive has no reading called ${block.about.text}${near === undefined ? '' : `; the nearest is ${near}`}.`,
        todo:
          near === undefined
            ? 'Name the reading that the move was worked out from, or write that reading down.'
            : `Write \`move after ${near}\` if that is meant.`,
        found: block.about.text,
        ...(near !== undefined && { data: { nearest: near } }),
      },
    ]
  },
  fixes: ({ at, data }) => useNearest(at, data?.nearest),
})
