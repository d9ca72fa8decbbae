import type { Block } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { poleOf, wayBack } from './cable-pole.ts'
import { partsOfFile } from './dc-parts.ts'

/** Whether a fuse, breaker or isolator in a cable of one pole has one of its kind in the cable of the other pole between the same parts. */
export const isPairedInOtherPole = plan((device: Block, lookup: Lookup): boolean => {
  const cable = lookup.referred('in')
  const back = cable && poleOf(cable) ? wayBack(cable, lookup) : undefined
  return (
    back !== undefined &&
    lookup.ofFile(partsOfFile).switches.some((one) => one.in === back && one.kind === device.kind)
  )
})
