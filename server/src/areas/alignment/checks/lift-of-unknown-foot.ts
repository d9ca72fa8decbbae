import { check, theLanguage } from '../../../checks/check.ts'
import { factOf, placeOfPart } from '../../../job/model.ts'
import { otherFeet, unknownFeet } from '../feet-named.ts'

export default check({
  id: 'alignment/lift-of-unknown-foot',
  severity: 'error',
  title: 'Lift of an unknown foot',
  why: 'If no foot has that name, nobody knows which foot was slackened.',
  source: theLanguage,
  on: 'reading',
  plan: 'waits',
  onceReplaced: 'stays',
  needs: { lifts: 'reading.lifts' },
  fires: `drive main {
  bed {
    adjuster: shims
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm starboard }
  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    lifts: aft 0.02 mm, forward 0.02 mm
#                       ^^^^^^^ no foot called forward
  }
}`,
  quiet: `drive main {
  bed {
    adjuster: shims
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm starboard }
  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    lifts: aft 0.02 mm, fwd 0.02 mm
  }
}`,
  run: ({ lifts }, lookup) =>
    unknownFeet(
      lifts.value.map(({ name }, i) => ({ name, at: placeOfPart(lifts, i) })),
      lookup,
    ),
  fixes: (finding, { block, lookup }) => {
    const lifts = block && factOf(block, 'reading.lifts')?.value
    return otherFeet(finding, lookup, (name) => lifts?.some((lift) => lift.name === name) === true)
  },
})
