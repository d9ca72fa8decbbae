import type { Block } from '../../../job/model.ts'
import { greatest } from '../../../quantity/extremes.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { attempt } from './attempt.ts'
import { motorLimitOf, motorOf } from './drive-input.ts'

/** What a motor does to its gear, SI. */
interface GearLoad {
  readonly torque: number
  readonly speed: number
  readonly isSpeedStated: boolean
}

/** Undefined where the motor does not say enough. */
export const gearLoad = plan((gear: Block, lookup: Lookup): GearLoad | undefined => {
  const drive = gear.parent
  if (drive?.kind !== 'drive') return undefined
  const limit = motorLimitOf(drive, lookup.from(drive))
  if (!limit.ok) return undefined
  const { ratedTorque, maxSpeed, curve } = limit.value
  const highest = greatest(curve?.map(({ value }) => value) ?? []) ?? ratedTorque
  const stated = attempt(() => ok(statedFact(motorOf(drive), 'motor.max-speed')))
  return {
    torque: Math.max(highest, ratedTorque),
    speed: maxSpeed,
    isSpeedStated: stated.ok && stated.value !== undefined,
  }
})
