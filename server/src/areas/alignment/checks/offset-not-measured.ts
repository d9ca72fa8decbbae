import { atHead, check, published } from '../../../checks/check.ts'
import { addFact } from '../../../checks/fix-text.ts'
import { correction } from '../at-read.ts'
import { placesOf } from '../fixes.ts'
import { replacedBy } from '../plans/reading-history.ts'

export default check({
  id: 'alignment/offset-not-measured',
  severity: 'warning',
  title: 'Offset not measured',
  why: 'Shafts with parallel faces can still be offset. Face gaps alone do not show that, unless a pilot holds the flanges concentric.',
  source: published('rim-and-face method: Bloch & Geitner, Machinery Component Maintenance and Repair'),
  on: 'reading',
  plan: 'goes-on',
  onceReplaced: replacedBy,
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
# ^^^^^^^^^^^^^
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
  }
}`,
  quiet: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}`,
  run: (_facts, lookup) => {
    const c = correction(lookup)
    if (c?.offsetBasis !== 'unknown' || lookup.block.unread.has('offsets')) return []
    return [
      atHead(lookup.block, {
        message: 'The offset was not measured, so this reading cannot show that the machine is aligned.',
        detail: 'Shafts with parallel faces can still be offset.',
        todo: 'Read the step between the flange rims at the same places and add `offsets`. Or write `pilot: yes` if a pilot holds the flanges concentric.',
        data: { add: 'offsets' },
      }),
    ]
  },
  fixes: (_finding, { block }) => {
    const places = block && placesOf(block, 'gaps')
    return !block || places === undefined
      ? []
      : [
          {
            title: 'Add the offsets',
            edits: [addFact(block, 'offsets', places)],
            preferred: true,
            leaves: ['job/value-not-allowed'],
          },
        ]
  },
})
