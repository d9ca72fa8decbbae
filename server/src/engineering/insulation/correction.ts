import { inRange } from '../guard.ts'

export type WindingInsulation = 'thermoplastic' | 'thermosetting'

export interface InsulationCorrection {
  /** What the measured resistance is multiplied by. */
  readonly factor: number
  /** The law that gave it. */
  readonly method: 'halving' | 'thermosetting'
}

/** Halves for each 10 K: 0.5^((40 - t)/10). */
const halving = (celsius: number): number => 0.5 ** ((40 - celsius) / 10)

/** The two branches of IEEE 43-2013 for thermosetting insulation, from memory; beyond 10 and 85 °C its ends count. */
const thermosetting = (celsius: number): number => {
  const t = Math.min(celsius, 85)
  return Math.exp((t < 40 ? -1245 : -4230) * (1 / (t + 273) - 1 / 313))
}

/** Factor that brings an insulation resistance measured at `celsius` (-40 to 180 °C, else OutOfRange) to 40 °C. Above 40 °C it is more than 1. Halving for each 10 K
 * is the rule for older, thermoplastic insulation. For thermosetting insulation IEEE 43-2013 has a law of its own, here from memory: for 10 to 85 °C; below 10 °C
 * halving counts, which is stricter. Where the insulation is not known, the smaller factor counts. Source: halving in an engineering forum and a manual of an
 * insulation tester, 150 MΩ at 20 °C being 75 MΩ at 30 °C.
 * @example insulationCorrection({ celsius: 20, insulation: 'thermoplastic' }).factor // 0.25 */
export function insulationCorrection(given: {
  readonly celsius: number
  readonly insulation: WindingInsulation | undefined
}): InsulationCorrection {
  const celsius = inRange('temperature in °C', given.celsius, -40, 180)
  const byHalving: InsulationCorrection = { factor: halving(celsius), method: 'halving' }
  if (given.insulation === 'thermoplastic' || celsius < 10) return byHalving
  const bySetting: InsulationCorrection = { factor: thermosetting(celsius), method: 'thermosetting' }
  if (given.insulation === 'thermosetting') return bySetting
  return byHalving.factor <= bySetting.factor ? byHalving : bySetting
}
