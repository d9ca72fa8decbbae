import { awgArea } from './awg.ts'
import type { ConductorSection } from './conductor.ts'

/** The smallest conductors that the rules allow, m². */
export interface SmallestSection {
  readonly alone: number
  /** Among others inside a sheath. */
  readonly inSheath: number
  readonly source: string
}

/** The smallest conductor for a boat, by the system its size is in. AWG: 16, inside a sheath 18. Metric: 1 mm², in a multicore sheath 0.75 mm².
 * That ISO 10133 lets a conductor of 200 mm or less be thinner is not used: it gives no figure there. Source: 33 CFR 183.425(d) and (e); ISO
 * 10133:2012, 7.7.
 * @example smallestSection('metric').alone // 1e-6 */
export const smallestSection = (system: ConductorSection['system']): SmallestSection =>
  system === 'awg'
    ? { alone: awgArea(16), inSheath: awgArea(18), source: '33 CFR 183.425(d) and (e)' }
    : { alone: 1e-6, inSheath: 0.75e-6, source: 'ISO 10133:2012, 7.7' }
