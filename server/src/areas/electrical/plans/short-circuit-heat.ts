import {
  type ClearingCurve,
  clearing,
  clearingCurve,
  largestEnergy,
} from '../../../engineering/electrical/clearing-curve.ts'
import {
  adiabaticConstant,
  isAdiabatic,
  temperaturesIfUnknown,
  withstand,
} from '../../../engineering/electrical/withstand.ts'
import { type Block, factOf } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { celsius } from '../../common/celsius.ts'
import { ok } from '../../common/outcome.ts'
import { outcomeOf } from './cable-outcome.ts'
import { faultsAt, feedingFaultsIn } from './faults.ts'

/** The curve that a fuse or breaker states. */
export function curveOf(device: Block): ClearingCurve | undefined {
  const points = factOf(device, 'protection.clears')?.value
  return points && clearingCurve(points.map(({ at, value }) => ({ current: at, time: value })))
}

/** How late a fuse or breaker may open the smallest short circuit, s; undefined time: its curve does not show that it opens at all. */
interface Opening {
  /** A. */
  readonly amps: number
  readonly time: number | undefined
}

/** Undefined where its curve, or the short circuits through it, are not known. */
export const latestOpening = plan((device: Block, lookup: Lookup): Opening | undefined => {
  const outcome = outcomeOf(() => {
    const curve = curveOf(device)
    const amps = faultsAt(device, lookup)?.lowest
    return ok(curve && amps !== undefined ? { amps, time: clearing(curve, amps).latest } : undefined)
  })
  return outcome.ok ? outcome.value : undefined
})

/** The smallest current from `least` to `most` (A) that a device opens within 5 s: up to there the heat stays in the copper. */
function fastFrom(curve: ClearingCurve, least: number, most: number): number | undefined {
  const isFast = (amps: number): boolean => {
    const { latest } = clearing(curve, amps)
    return latest !== undefined && isAdiabatic(latest)
  }
  if (isFast(least)) return least
  if (!isFast(most)) return undefined
  let [slow, fast] = [least, most]
  for (let i = 0; i < 60; i += 1) {
    const middle = Math.sqrt(slow * fast)
    if (isFast(middle)) fast = middle
    else slow = middle
  }
  return fast
}

/** The most that a device lets through in any short circuit that it opens within 5 s, as I²t, A²s; undefined where that is not known. */
function letThroughBy(device: Block, lookup: Lookup): number | undefined {
  const curve = curveOf(device)
  const { lowest, highest } = faultsAt(device, lookup) ?? {}
  if (!curve || lowest === undefined || highest === undefined) return undefined
  const least = fastFrom(curve, Math.min(lowest, highest), highest)
  return least === undefined ? undefined : largestEnergy(curve, { least, most: highest })
}

/** Heat of a short circuit in a conductor against what it bears, both as I²t, A²s. */
export interface ShortCircuitHeat {
  readonly heat: number
  readonly bears: number
  /** A·√s/m². */
  readonly k: number
}

/** Of the piece with the most of it; undefined where the curve of a fuse or breaker before it is not stated, or the cable not known. Currents of
 * several that feed one place add up at each moment, so that the roots of their heats do at most (Minkowski's inequality). */
export const shortCircuitHeat = plan((cable: Block, lookup: Lookup): ShortCircuitHeat | undefined => {
  const outcome = outcomeOf(() => {
    const area = factOf(cable, 'cable.conductor')?.value
    const insulation = factOf(cable, 'cable.insulation')?.value
    if (area === undefined || insulation === undefined) return ok(undefined)
    const k = adiabaticConstant(temperaturesIfUnknown(celsius(insulation)))
    const bears = withstand({ area: area * (factOf(cable, 'cable.parallel')?.value ?? 1), k })
    const heats = feedingFaultsIn(cable, lookup).flatMap((devices) => {
      const each = devices.map((id) => letThroughBy(lookup.blockOf(id), lookup.from(lookup.blockOf(id))))
      const known = each.flatMap((heat) => heat ?? [])
      return known.length > 0 && known.length === each.length
        ? [known.reduce((sum, heat) => sum + Math.sqrt(heat), 0) ** 2]
        : []
    })
    return ok(heats.length === 0 ? undefined : { heat: Math.max(...heats), bears, k })
  })
  return outcome.ok ? outcome.value : undefined
})
