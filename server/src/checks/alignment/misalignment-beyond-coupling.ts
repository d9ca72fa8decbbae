import { formatNumber } from '../../quantity/format.ts'
import { expanded } from '../../quantity/uncertainty.ts'
import { at, check, theJobFile } from '../check.ts'
import { correction } from '../correction.ts'

export default check({
  id: 'alignment/misalignment-beyond-coupling',
  severity: 'error',
  title: 'Further out than the coupling is rated for',
  why: 'A flexible element that is bent further than it is rated for heats, cracks and fails, and what it lets go of may fly.',
  source: theJobFile('the rating of the flexible element'),
  on: 'reading',
  needs: { taken: 'reading.taken' },
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
  run: ({ taken }, context) => {
    const c = correction(context)
    const coupling = context.near('coupling')
    const rated = coupling?.facts.get('max-offset')
    const bent = coupling?.facts.get('max-angle')
    if (!c) return []
    const angle = Math.hypot(c.slope.vertical.value, c.slope.horizontal.value)
    const sure = 2 * Math.max(c.slope.vertical.standard, c.slope.horizontal.standard)
    const parts = c.offset?.parts
    const away = parts ? Math.hypot(parts.vertical.value, parts.horizontal.value) : 0
    const todo =
      'Do not run the drive. Align it first, or have the maker of the coupling say what the element bears.'
    return [
      ...(rated && c.offset && away - expanded(c.offset.value) > (rated.value as number)
        ? [
            at(taken, {
              message: `The machine flange stands ${context.show(away, 'length')} from the shaft axis; the coupling is rated for ${context.show(rated.value as number, 'length')}.`,
              todo,
              related: [{ at: rated.at, message: 'the rating' }],
            }),
          ]
        : []),
      ...(bent && angle - sure > (bent.value as number)
        ? [
            at(taken, {
              message: `The axes stand at ${formatNumber(angle * 1000, 3)} mrad to each other; the coupling is rated for ${formatNumber((bent.value as number) * 1000, 3)} mrad.`,
              todo,
              related: [{ at: bent.at, message: 'the rating' }],
            }),
          ]
        : []),
    ]
  },
})
