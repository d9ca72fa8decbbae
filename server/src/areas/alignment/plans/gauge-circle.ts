import type { Block } from '../../../job/model.ts'
import { statedFact } from '../../common/stated-fact.ts'
import type { RoundFact } from './readings.ts'

/** The circle on which the gauge goes in, m; `stated` where the coupling says it, else it is the rim of the flange. */
export interface GaugeCircle {
  readonly diameter: number
  readonly stated: boolean
}

/** Undefined where the coupling says neither. Throws Unreadable. */
export function gaugeCircle(coupling: Block | undefined): GaugeCircle | undefined {
  const stated = statedFact(coupling, 'coupling.gauge-diameter')
  const diameter = stated ?? statedFact(coupling, 'coupling.flange-diameter')
  return diameter === undefined ? undefined : { diameter, stated: stated !== undefined }
}

/** What is assumed where the coupling does not say its gauge-diameter, by what the faces, or the rims, were read into. */
export function formatAssumedCircle(by: RoundFact, flange: string): string {
  const where = {
    gaps: `the gaps were read at the rim of the flange, on ${flange}`,
    face: `the face dial stood at the rim of the flange, on ${flange}`,
    rims: `the gap variation is worked out on the diameter of the flange, ${flange}`,
  }
  const way = by === 'face-dial' ? 'face' : by === 'gaps' || by === 'gaps-half-turn' ? 'gaps' : 'rims'
  return `${where[way]}: the coupling does not say its gauge-diameter`
}
