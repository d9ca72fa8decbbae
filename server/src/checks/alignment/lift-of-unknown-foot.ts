import { childrenOf, factOf } from '../../job/model.ts'
import { nearest } from '../../quantity/nearest.ts'
import { check, theLanguage } from '../check.ts'
import { replace, useNearest } from '../fix-text.ts'

export default check({
  id: 'alignment/lift-of-unknown-foot',
  severity: 'error',
  title: 'Lift of a foot the bed has not',
  why: 'A lift under a name that no foot has leaves the foot that was slackened unknown.',
  source: theLanguage,
  on: 'reading',
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
  run: ({ lifts }, { near }) => {
    const bed = near('bed')
    const feet = bed ? childrenOf(bed, 'foot') : []
    const names = feet.flatMap(({ name }) => name ?? [])
    // A foot whose name could not be read may be the one.
    if (names.length === 0 || names.length < feet.length) return []
    return lifts.value
      .filter(({ name }) => !names.includes(name))
      .map(({ name, span }) => {
        const close = nearest(name, names)
        return {
          at: { section: (lifts.origin ?? lifts.at).section, span },
          message: `The bed has no foot called ${name}; it has ${names.join(', ')}.`,
          todo: close === undefined ? 'Name the foot as the bed does.' : `Write ${close} if that is meant.`,
          found: name,
          ...(close !== undefined && { data: { nearest: close } }),
        }
      })
  },
  fixes: ({ at, data }, { block, lookup }) => {
    const bed = lookup?.near('bed')
    const lifts = block && factOf(block, 'reading.lifts')?.value
    const left = (bed ? childrenOf(bed, 'foot') : [])
      .flatMap(({ name }) => name ?? [])
      .filter((name) => name !== data?.nearest && !lifts?.some((lift) => lift.name === name))
    return [
      ...useNearest(at, data?.nearest),
      ...left.map((name) => ({ title: `Write ${name}`, edits: [replace(at, name)] })),
    ]
  },
})
