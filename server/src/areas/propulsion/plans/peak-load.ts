import type { Block } from '../../../job/model.ts'
import { childrenOf, factOf } from '../../../job/model.ts'
import { motorOf } from './drive-input.ts'

/** What the motor of a drive gives for a short time at a gear or coupling, N·m. What the gear loses is not counted: when it is driven hard after a
 * stop it may lose less. Undefined where the motor states no peak torque, or a coupling behind a gear cannot be reckoned. */
export function peakLoad(part: Block): number | undefined {
  const drive = part.parent
  const motor = drive?.kind === 'drive' ? motorOf(drive) : undefined
  const peak = motor && factOf(motor, 'motor.peak-torque')?.value
  if (!drive || peak === undefined || part.kind === 'gear') return peak
  const [gear] = childrenOf(drive, 'gear')
  const ratio = gear ? factOf(gear, 'gear.ratio')?.value : 1
  return ratio === undefined ? undefined : peak * ratio
}
