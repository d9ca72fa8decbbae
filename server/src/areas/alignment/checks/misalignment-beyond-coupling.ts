import { at, check, theJobFile } from '../../../checks/check.ts'
import { firstLine } from '../../../checks/one-line.ts'
import type { Value } from '../../../job/model.ts'
import { formatLength, formatLimit, formatSlope } from '../../../quantity/format-measures.ts'
import { expanded } from '../../../quantity/uncertainty.ts'
import { correction } from '../at-read.ts'
import { afterOutside } from '../gaps-and-offsets.ts'
import { angleOf, isPast } from '../plans/rating.ts'

/** A rating that is exceeded. */
interface Beyond {
  readonly rating: Value<number>
  readonly words: string
}

export default check({
  id: 'alignment/misalignment-beyond-coupling',
  severity: 'error',
  title: 'Misalignment beyond the rating of the coupling',
  why: 'A flexible element that bends beyond its rating heats, cracks and fails. Broken parts may fly off.',
  source: theJobFile('the rating of the flexible element'),
  on: 'reading',
  plan: 'goes-on',
  onceReplaced: 'stays',
  needs: { taken: 'reading.taken' },
  wants: { offset: 'coupling.max-offset', angle: 'coupling.max-angle' },
  fires: `drive main {
  coupling { kind: flexible  flange-diameter: 100 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm  max-offset: 0.5 mm }
  reading dry-1 {
    taken: 2026-03-04
#          ^^^^^^^^^^ the coupling allows
    gauge: 0.02 mm
    gaps: top 2.00 mm, starboard 1.80 mm, bottom 1.60 mm, port 1.80 mm
    offsets: top 0.60 mm, starboard 0 mm, bottom -0.60 mm, port 0 mm
  }
}`,
  quiet: `drive main {
  coupling { kind: flexible  flange-diameter: 100 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm  max-offset: 0.5 mm }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}`,
  run: ({ taken, offset, angle }, lookup) => {
    const c = correction(lookup)
    if (!c || isPast(lookup.block, lookup)) return []
    // Where the machine is to stand while it is read bends nothing once the coupling is joined: what counts is how far it is from there.
    const away = c.offset?.value
    const slope = angleOf(c)
    const from = c.target ? 'from its target' : 'from the shaft axis'
    const beyond: Beyond[] = []
    if (offset && away && away.value - expanded(away) > offset.value)
      beyond.push({
        rating: offset,
        words: `The machine flange is ${formatLength(away.value, lookup.system)} ${from}; the coupling allows ${formatLimit(offset.value, lookup.system)}.`,
      })
    if (angle && slope.value - expanded(slope) > angle.value)
      beyond.push({
        rating: angle,
        words: `The axes are at ${formatSlope(slope.value)} to each other${c.target ? ', counted from the target' : ''}; the coupling allows ${formatSlope(angle.value)}.`,
      })
    if (beyond.length === 0) return []
    const todo = c.verdict === 'outside' ? afterOutside(c, lookup) : 'Align it first.'
    return [
      at(taken, {
        ...firstLine(beyond.map(({ words }) => words).join(' ')),
        todo: `Do not run the drive. ${todo} Or ask the maker of the coupling what the element can take.`,
        assumptions: c.assumptions,
        related: beyond.map(({ rating }) => ({ at: rating.at, message: 'the rating' })),
      }),
    ]
  },
})
