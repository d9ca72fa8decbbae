import { formatNumber, formatSi, inUnit, shownUnit } from '../../quantity/format.ts'
import type { Kind, UnitSystem } from '../../quantity/kinds.ts'
import { findUnit, type Unit } from '../../quantity/units.ts'
import type { Part } from '../../syntax/tree.ts'

/** A size in inches or feet without decimals is nominal, as `2 in` and `1-1/4 in` are, and so is a wire gauge: exact. Else one in the last place written. */
function stepIn(numbers: string, unit: Unit): number {
  const exact = unit.named !== undefined || /\d\/\d/.test(numbers)
  if (exact || (/^(in|ft)$/.test(unit.name) && !numbers.includes('.'))) return 0
  const steps = [...numbers.matchAll(/\d*(?:\.(\d+))?(?:[eE]([+-]?\d+))?/g)]
    .filter(([number]) => number !== '')
    .map(([, decimals = '', exponent = '0']) => 10 ** (Number(exponent) - decimals.length))
  return Math.min(...steps) * unit.si
}

/** How finely a value of the kind is written, SI; 0: exactly. */
export function stepOf(parts: readonly Part[], kind: Kind): number {
  const steps = parts.flatMap((part) => {
    if ((part.type !== 'amount' && part.type !== 'two-sided') || !part.unit) return []
    const unit = findUnit(part.unit.text)
    if (unit?.kind !== kind) return []
    // What stands between the sides of `+3/-2` is no fraction.
    return [stepIn(part.type === 'amount' ? part.number : part.text.replace('/', ' '), unit)]
  })
  return steps.length === 0 ? 0 : Math.min(...steps)
}

/** No gauge or dial aboard reads finer; to this an exact size is said. */
const finest: Readonly<Record<string, number>> = { mm: 2, m: 4, in: 4 }

/** Decimals that say a value in this unit as finely as `step`, and so with no fewer digits than it is written with, in two digits at least; what
 * is exact, as finely as is of use. Common practice, as NIST SP 811 (2008), B.7, has it. */
function decimalsFor(si: number, unit: Unit, step: number): number {
  const size = Math.abs(inUnit(si, unit))
  const whole = size > 0 ? Math.floor(Math.log10(size)) + 1 : 1
  const most = finest[unit.name] ?? Number.POSITIVE_INFINITY
  if (step === 0) return Math.min(most, Math.max(4 - whole, finest[unit.name] ?? 0))
  // Whole units are never rounded to tens: a room of 3 m is 118 in, not 120 in.
  return Math.min(most, Math.max(0, 2 - whole, Math.ceil(-Math.log10(step / unit.si) - 1e-9)))
}

/** A value as finely as `step`. Sections of conductors are known by their tables: as these have them. */
export function formatTo(si: number, kind: Kind, system: UnitSystem, step: number): string {
  const unit = shownUnit(kind, si, system)
  if (!unit || kind === 'area') return formatSi(si, kind, system)
  const place = 10 ** decimalsFor(si, unit, step)
  return `${formatNumber(Math.round(Number((inUnit(si, unit) * place).toPrecision(12))) / place, 12)} ${unit.name}`
}
