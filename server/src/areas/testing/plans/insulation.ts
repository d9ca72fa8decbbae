import { insulationCorrection } from '../../../engineering/insulation/correction.ts'
import { insulationMinimum } from '../../../engineering/insulation/minimum.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { greatest } from '../../../quantity/extremes.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { celsius, formatCelsius } from '../../common/celsius.ts'
import { Unreadable } from '../../common/stated-fact.ts'
import { isHighStated } from '../../common/string-facts.ts'
import { highestOfBank } from '../../electrical/plans/banks-around.ts'
import { batteriesAlong } from '../../electrical/plans/dc-sides.ts'
import { partOf } from './test-log.ts'

export interface Insulation {
  /** As measured, Ω. */
  readonly measured: number
  /** At 40 °C for a winding, else as measured, Ω. Undefined where the temperature of a winding is not stated. */
  readonly counted: number | undefined
  /** How it came to that: `0.25 × (halving for each 10 K) at 20 degC`. */
  readonly how: string | undefined
  /** The least permitted, Ω. */
  readonly least: number
  readonly limitFrom: string
  readonly assumptions: readonly string[]
}

const methods = {
  halving: 'halving for each 10 K',
  thermosetting: 'IEEE 43-2013 for thermosetting insulation, from memory',
} as const

/** Ω for each volt of a live DC system. UN ECE R100, from memory. */
const perVolt = 100
/** Least insulation of a cable, Ω: IEC 60364-6, table 6A, up to 500 V, from memory. */
const leastOfCable = 1e6

/** The insulation resistance that a test found, and what it must be. Undefined where it is no such test, or on a part that has no limit. */
export const insulationOf = plan((test: Block, lookup: Lookup): Insulation | undefined => {
  const measured = factOf(test, 'test.resistance')?.value
  const kind = factOf(test, 'test.kind')?.value
  const part = partOf(lookup)
  if (measured === undefined || !part) return undefined
  if (kind !== 'insulation-resistance' && kind !== 'earth-leakage') return undefined
  const permitted = factOf(test, 'test.permitted')?.value
  const own = permitted?.quantity === 'resistance' && permitted.low !== undefined ? permitted.low : undefined
  const limit = (least: number, limitFrom: string) =>
    own === undefined ? { least, limitFrom } : { least: own, limitFrom: 'the job' }
  const asMeasured = { measured, counted: measured, how: undefined, assumptions: [] }
  if (part.kind === 'cable' && kind === 'insulation-resistance')
    return { ...asMeasured, ...limit(leastOfCable, 'IEC 60364-6, table 6A, from memory') }
  if (part.kind === 'battery' || part.kind === 'busbar') {
    const banks = banksOf(part, lookup)
    const volts = greatest(banks.flatMap((bank) => highestOfBank(bank, lookup) ?? []))
    const isOpen = banks.some((bank) => highestOfBank(bank, lookup) === undefined)
    if ((volts === undefined || isOpen) && own === undefined) return undefined
    const isUsual = banks.some((bank) => !isHighStated([bank]))
    return {
      ...asMeasured,
      ...limit(perVolt * (volts ?? 0), '100 ohm for each volt, UN ECE R100, from memory'),
      assumptions: own === undefined && isUsual ? ['a charged bank has 1.25 times its nominal voltage'] : [],
    }
  }
  if (part.kind !== 'motor' || kind !== 'insulation-resistance') return undefined
  return { measured, ...windingOf(test, part, measured, limit) }
})

/** A battery, or those that a busbar is joined to. */
function banksOf(part: Block, lookup: Lookup): readonly Block[] {
  if (part.kind === 'battery') return [part]
  try {
    return batteriesAlong(part, undefined, lookup.from(part)).map(lookup.blockOf)
  } catch (error) {
    if (error instanceof Unreadable) return []
    throw error
  }
}

function windingOf(
  test: Block,
  motor: Block,
  measured: number,
  limit: (least: number, from: string) => Pick<Insulation, 'least' | 'limitFrom'>,
) {
  const winding = factOf(motor, 'motor.winding')?.value
  const volts = factOf(motor, 'motor.voltage')?.value
  const insulation = factOf(motor, 'motor.winding-insulation')?.value
  // A formed winding whose voltage is not known is taken for one of high voltage, which is stricter.
  const least = insulationMinimum({ volts: volts ?? 1000, winding: winding ?? 'random' })
  const at = factOf(test, 'test.temperature')?.value
  const correction = at === undefined ? undefined : insulationCorrection({ celsius: celsius(at), insulation })
  return {
    counted: correction && measured * correction.factor,
    how:
      at === undefined || !correction
        ? undefined
        : `${Number(correction.factor.toPrecision(3))} × the resistance at ${formatCelsius(celsius(at))} (${methods[correction.method]})`,
    ...limit(least, 'IEEE 43-2013, at 40 °C'),
    assumptions: [
      ...(winding ? [] : ['the winding is random-wound']),
      ...(insulation || at === undefined ? [] : ['the stricter of the two corrections to 40 °C counts']),
    ],
  }
}
