import { at, check, type Reported, theJobFile } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { type Block, factOf } from '../../../../job/model.ts'
import type { Lookup } from '../../../../store/lookup.ts'
import { formatCarried, formatLoad } from '../../../common/amperes.ts'
import { nameOfString } from '../../../common/battery-string.ts'
import { limitedTogether, permittedAt } from '../../plans/controller-limits.ts'

type Setting = 'controller.input-current-limit' | 'controller.charge-limit'

/** What the controllers on some batteries may come to together by a setting, at the first that states it. */
function settingOf(setting: Setting, lookup: Lookup) {
  const stating = limitedTogether(lookup.block, setting, lookup)
  const limits = stating.flatMap((one) => factOf(one, setting) ?? [])
  const [first] = limits
  return first && { first, stating, limits, amps: limits.reduce((sum, { value }) => sum + value, 0) }
}

const who = (stating: readonly Block[]): string =>
  stating.length > 1 ? `The ${stating.length} controllers together` : 'The controller'

function drawn(lookup: Lookup): readonly Reported[] {
  const set = settingOf('controller.input-current-limit', lookup)
  const permitted = permittedAt(lookup.block, 'battery.current', lookup)
  if (!set || permitted === undefined || reaches(permitted, set.amps)) return []
  const peak = permittedAt(lookup.block, 'battery.peak-current', lookup)
  const isForShort = peak !== undefined && reaches(peak, set.amps)
  const [found, limit] = [
    formatLoad(set.amps),
    formatCarried(peak === undefined || isForShort ? permitted : peak),
  ]
  return [
    at(set.first, {
      ...((isForShort || peak === undefined) && { severity: 'warning' as const }),
      message: `${who(set.stating)} may take ${found}; the battery permits ${limit}${isForShort || peak === undefined ? ' continuously' : ' at its peak'}.`,
      ...(set.stating.length > 1 && {
        detail: `They are on the same batteries: ${nameOfString(set.stating)}.`,
      }),
      todo: 'Set a lower limit, or use batteries that permit more.',
      found,
      limit: `at most ${limit}`,
      related: set.limits.slice(1).map((one) => ({ at: one.at, message: 'takes from the same batteries' })),
    }),
  ]
}

function charged(lookup: Lookup): readonly Reported[] {
  const set = settingOf('controller.charge-limit', lookup)
  const permitted = permittedAt(lookup.block, 'battery.charge-current', lookup)
  if (!set || permitted === undefined || reaches(permitted, set.amps)) return []
  const [found, limit] = [formatLoad(set.amps), formatCarried(permitted)]
  return [
    at(set.first, {
      message: `${who(set.stating)} may give ${found} back; the battery permits ${limit}.`,
      detail: 'What chargers give at the same time comes on top.',
      todo: 'Set a lower limit for braking.',
      found,
      limit: `at most ${limit}`,
      related: set.limits.slice(1).map((one) => ({ at: one.at, message: 'gives to the same batteries' })),
    }),
  ]
}

export default check({
  id: 'controller/limit-beyond-battery',
  severity: 'error',
  title: 'Controller set to more than the battery permits',
  why: 'Above the currents that its maker permits, a battery gets too hot, or its management system switches it off under way. If the limit is above the continuous current and not above the peak current, it is a warning: the controller does not know how long it may last.',
  source: theJobFile('the currents that the battery states: continuous, peak and on charge'),
  on: 'controller',
  fires: `battery house { nominal: 96 V  current: 210 A  peak-current: 420 A }
drive main {
  controller {
    input-current-limit: 450 A
#                        ^^^^^ permits 420 A
  }
}`,
  quiet: `battery house { nominal: 96 V  current: 210 A  charge-current: 100 A }
drive main {
  controller { input-current-limit: 210 A  charge-limit: 100 A }
}`,
  run: (_facts, lookup) => [...drawn(lookup), ...charged(lookup)],
})
