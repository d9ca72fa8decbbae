import type { Block } from '../job/model.ts'
import { said } from './said.ts'

/** The circle on which the gauge goes in, m; `stated` where the coupling says it, else it is the rim of the flange. */
export interface GaugeCircle {
  readonly diameter: number
  readonly stated: boolean
}

/** Undefined where the coupling says neither. Throws Unreadable. */
export function gaugeCircle(coupling: Block | undefined): GaugeCircle | undefined {
  const stated = said(coupling, 'coupling.gauge-diameter')
  const diameter = stated ?? said(coupling, 'coupling.flange-diameter')
  return diameter === undefined ? undefined : { diameter, stated: stated !== undefined }
}
