import { type Block, factOf } from '../../job/model.ts'
import { statedFact } from './stated-fact.ts'

/** On charge a lead-acid cell of nominal 2 V may see 2.5 V (equalising; common practice, no source). */
export const onCharge = 1.25

export const chargedAsUsual = `the battery reaches ${onCharge} times its nominal voltage on charge: its window is not stated`

/** In series voltages and resistances add up; undefined where that of one battery is not known. */
export function sumOver(
  string: readonly Block[],
  of: (battery: Block) => number | undefined,
): number | undefined {
  let sum = 0
  for (const battery of string) {
    const value = of(battery)
    if (value === undefined) return undefined
    sum += value
  }
  return sum
}

/** Nominal voltage of a string, V. Throws Unreadable, as all of these. */
export const nominalOf = (string: readonly Block[]): number | undefined =>
  sumOver(string, (battery) => statedFact(battery, 'battery.nominal'))

/** The low end of its window, V, as far as each battery states one. */
export const lowOf = (string: readonly Block[]): number | undefined =>
  sumOver(string, (battery) => statedFact(battery, 'battery.window')?.low)

/** The same; of a battery that states none its nominal voltage. */
export const lowestOfString = (string: readonly Block[]): number | undefined =>
  sumOver(
    string,
    (battery) => statedFact(battery, 'battery.window')?.low ?? statedFact(battery, 'battery.nominal'),
  )

/** The highest voltage of a string, V: a battery whose window is not stated goes to `overNominal` times its nominal voltage. */
export const highestOfString = (string: readonly Block[], overNominal = onCharge): number | undefined =>
  sumOver(string, (battery) => {
    const window = statedFact(battery, 'battery.window')
    const nominal =
      window?.high === undefined
        ? statedFact(battery, 'battery.nominal')
        : factOf(battery, 'battery.nominal')?.value
    const high = window?.high ?? (nominal === undefined ? undefined : overNominal * nominal)
    // A window below the nominal voltage is wrong in one of the two: the higher one counts.
    return high === undefined ? undefined : Math.max(high, nominal ?? 0, window?.low ?? 0)
  })

/** Whether each battery of a string states the high end of its window. */
export const isHighStated = (string: readonly Block[]): boolean =>
  string.every((battery) => factOf(battery, 'battery.window')?.value.high !== undefined)
