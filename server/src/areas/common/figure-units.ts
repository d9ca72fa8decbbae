import { inUnit } from '../../quantity/format.ts'
import { type Kind, kinds } from '../../quantity/kinds.ts'
import { findUnit, type Unit } from '../../quantity/units.ts'

/** The unit of a figure in JSON and CSV, the same whatever the job is written in; undefined for a plain number. */
export function unitOf({
  kind,
  unit = kinds[kind].shown.metric,
}: {
  readonly kind: Kind
  readonly unit?: string
}): Unit | undefined {
  if (unit === '') return undefined
  const found = findUnit(unit)
  if (found?.kind !== kind) throw new Error(`${unit} is no unit of ${kinds[kind].words}.`)
  return found
}

/** Twelve digits, and none below a billionth of the unit: what is behind them is the noise of a double. */
const tidy = (value: number): number => (Math.abs(value) < 1e-9 ? 0 : Number(value.toPrecision(12)))

/** A value (SI) in the unit of its figure. */
export const valueIn = (unit: Unit | undefined, si: number): number => tidy(unit ? inUnit(si, unit) : si)

/** A difference of two values (SI) in the unit of their figure: an offset, as of degrees Celsius, drops out. */
export const differenceIn = (unit: Unit | undefined, si: number): number => tidy(unit ? si / unit.si : si)
