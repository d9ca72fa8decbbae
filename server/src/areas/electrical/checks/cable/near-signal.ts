import { at, check, commonPractice } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { signalLimits } from '../../../../engineering/electrical/cable-laying.ts'
import { systemOf } from '../../plans/cable-circuit.ts'
import { outcomeOf } from '../../plans/cable-outcome.ts'

export default check({
  id: 'cable/near-signal',
  severity: 'warning',
  title: 'Power cable beside a signal cable',
  why: 'The current of a controller is chopped some thousand times a second. In a signal cable beside it that shows as wrong readings and lost messages.',
  source: commonPractice(
    'two manuals of industrial drives: one asks for 100 mm where they run parallel, the other for 500 mm from a motor cable and 200 mm from a supply',
  ),
  on: 'cable',
  needs: { spacing: 'cable.signal-spacing' },
  fires: `drive main {
  controller { input: 72..120 V }
  motor m { power: 15 kW }
  cable phases { from: controller  to: m  signal-spacing: 60 mm }
#                                                         ^^^^^ 500 mm
}`,
  quiet: `drive main {
  controller { input: 72..120 V }
  motor m { power: 15 kW }
  cable phases { from: controller  to: m  signal-spacing: 550 mm }
}`,
  run: ({ spacing }, lookup) => {
    const outcome = outcomeOf(() => ({ ok: true, value: systemOf(lookup.block, lookup) }))
    const system = outcome.ok ? outcome.value : undefined
    // Where that is not known it may be a motor cable, which is the worse.
    const { least, safe } = signalLimits(system ?? 'three-phase')
    if (reaches(spacing.value, safe)) return []
    const isNear = !reaches(spacing.value, least)
    const [found, limit, low] = [spacing.value, safe, least].map((length) =>
      lookup.show(length, 'length'),
    ) as [string, string, string]
    return [
      at(spacing, {
        ...(!isNear && { severity: 'information' as const }),
        message: `A signal cable runs ${found} away; the stricter of two sources asks for ${limit}.`,
        detail: `The other asks for ${low}. ${system === 'dc' ? 'A DC cable of a controller.' : 'A motor cable.'}`,
        todo: 'Move them apart, and let them cross only at a right angle.',
        found,
        limit: `at least ${limit}`,
        ...(!system && { assumptions: ['it is a motor cable: what it carries is not known'] }),
      }),
    ]
  },
})
