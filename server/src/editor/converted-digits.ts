import { formatNumber, formatSi, inUnit, shownUnit } from '../quantity/format.ts'
import type { Kind, UnitSystem } from '../quantity/kinds.ts'
import { findUnit, type Unit } from '../quantity/units.ts'
import type { Part } from '../syntax/tree.ts'

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

/** No gauge or dial aboard reads finer. */
const finest: Readonly<Record<string, number>> = { mm: 2, in: 4 }

/** Decimals that say a value in this unit as finely as `step`, with two to four digits in all. */
function decimalsFor(si: number, unit: Unit, step: number): number {
  const size = Math.abs(inUnit(si, unit))
  const whole = size > 0 ? Math.floor(Math.log10(size)) + 1 : 1
  const wanted = step > 0 ? Math.ceil(-Math.log10(step / unit.si) - 1e-9) : Number.POSITIVE_INFINITY
  const decimals = Math.min(4, Math.max(2, whole + wanted)) - whole
  return Math.min(decimals, finest[unit.name] ?? decimals)
}

/** A value as finely as `step`. Sections of conductors are known by their tables: as these have them. */
export function sayTo(si: number, kind: Kind, system: UnitSystem, step: number): string {
  const unit = shownUnit(kind, si, system)
  if (!unit || kind === 'area') return formatSi(si, kind, system)
  const place = 10 ** decimalsFor(si, unit, step)
  return `${formatNumber(Math.round(inUnit(si, unit) * place) / place, 6)} ${unit.name}`
}
