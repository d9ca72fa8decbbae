import type { Value } from '../../job/model.ts'
import { saidLength, saidLimit, saidSlope } from '../../quantity/said.ts'
import { expanded } from '../../quantity/uncertainty.ts'
import { at, check, theJobFile } from '../check.ts'
import { correction } from '../correction.ts'
import { afterOutside } from '../judged.ts'

/** A rating that is exceeded. */
interface Beyond {
  readonly rating: Value<number>
  readonly words: string
}

export default check({
  id: 'alignment/misalignment-beyond-coupling',
  severity: 'error',
  title: 'Further out than the coupling is rated for',
  why: 'A flexible element that is bent further than it is rated for heats, cracks and fails, and what it lets go of may fly.',
  source: theJobFile('the rating of the flexible element'),
  on: 'reading',
  plan: 'goes-on',
  needs: { taken: 'reading.taken' },
  wants: { offset: 'coupling.max-offset', angle: 'coupling.max-angle' },
  fires: `drive main {
  coupling { kind: flexible  flange-diameter: 100 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm  max-offset: 0.5 mm }
  reading dry-1 {
    taken: 2026-03-04
#          ^^^^^^^^^^ rated for
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
  run: ({ taken, offset, angle }, context) => {
    const c = correction(context)
    // How the machine stood before it was aligned bends nothing in service.
    if (!c || c.laterReading !== undefined) return []
    // Where the machine is to stand while it is read bends nothing once the coupling is joined: what counts is how far it is from there.
    const away = c.offset?.value
    const slope = {
      value: c.gapVariation.value.value / c.gaugeDiameter,
      standard: c.gapVariation.value.standard / c.gaugeDiameter,
    }
    const from = c.target ? 'from where it is to stand' : 'from the shaft axis'
    const beyond: Beyond[] = []
    if (offset && away && away.value - expanded(away) > offset.value)
      beyond.push({
        rating: offset,
        words: `the machine flange stands ${saidLength(away.value, context.system)} ${from}, and the coupling is rated for ${saidLimit(offset.value, context.system)}`,
      })
    if (angle && slope.value - expanded(slope) > angle.value)
      beyond.push({
        rating: angle,
        words: `the axes stand at ${saidSlope(slope.value)} to each other${c.target ? ', counted from the target' : ''}, and the coupling is rated for ${saidSlope(angle.value)}`,
      })
    if (beyond.length === 0) return []
    const todo = c.verdict === 'outside' ? afterOutside(c, context) : 'Align it first.'
    return [
      at(taken, {
        message: `Further out than the coupling is rated for: ${beyond.map(({ words }) => words).join('; ')}.`,
        todo: `Do not run the drive. ${todo} Or have the maker of the coupling say what the element can take.`,
        assumptions: c.assumptions,
        related: beyond.map(({ rating }) => ({ at: rating.at, message: 'the rating' })),
      }),
    ]
  },
})
