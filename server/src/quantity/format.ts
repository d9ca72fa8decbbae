import type { Band } from './band.ts'
import { type Kind, kinds, type UnitSystem } from './kinds.ts'
import { findUnit, gaugeArea, saeArea, type Unit } from './units.ts'

/** What no double holds, in words: nobody reads "Infinity" or "NaN". */
function beyondNumbers(value: number): string {
  if (Number.isNaN(value)) return 'unknown'
  return value > 0 ? 'over 1e308' : 'below -1e308'
}

/** A number as a person writes it: `digits` significant digits, no exponent between a millionth and a billion, no trailing zeros. */
export function formatNumber(value: number, digits = 4): string {
  if (value === 0) return '0'
  const rounded = Number(value.toPrecision(digits))
  if (!Number.isFinite(rounded)) return beyondNumbers(rounded)
  const size = Math.abs(rounded)
  if (size < 1e-6 || size >= 1e9) return rounded.toExponential().replace('e+', 'e')
  return String(rounded)
}

/** A number with a fixed count of decimals and never a "-0". */
export const formatFixed = (value: number, decimals: number): string => {
  if (!Number.isFinite(value)) return beyondNumbers(value)
  const text = value.toFixed(decimals)
  return Number(text) === 0 ? text.replace('-', '') : text
}

export const inUnit = (si: number, unit: Unit): number => (si - unit.offset) / unit.si

/** The unit a result of this kind and size is shown in. */
export function shownUnit(kind: Kind, si: number, system: UnitSystem): Unit | undefined {
  const size = Math.abs(si)
  if (kind === 'length' && system === 'metric' && size >= 1) return findUnit('m')
  if (kind === 'length' && system === 'inch' && size >= 3.048) return findUnit('ft')
  if (kind === 'energy' && size < 3.6e6) return findUnit(size < 3600 ? 'J' : 'Wh')
  if (kind === 'power' && system === 'metric' && size < 1000) return findUnit('W')
  if (kind === 'resistance' && size < 1) return findUnit('mohm')
  if (kind === 'resistance' && size >= 1e6) return findUnit('Mohm')
  return findUnit(kinds[kind].shown[system])
}

const gauges = ['4/0', '3/0', '2/0', '1/0', ...Array.from({ length: 31 }, (_, i) => String(i))]

/** Places that an amount has at least, so that a fraction of an inch in sixty-fourths keeps its size, and at most, where no gauge shows more as
 * long as something is left. Common practice, no source. */
const places: Readonly<Record<string, { readonly least: number; readonly most?: number }>> = {
  mm: { least: 2 },
  in: { least: 3, most: 4 },
}

/** In the unit, with `digits` significant digits, as far as the places of a length allow. */
function formatDigits(si: number, unit: Unit, digits: number): string {
  const value = inUnit(si, unit)
  const before = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value))) + 1
  const { least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY } = places[unit.name] ?? {}
  const shown = Math.max(1, Math.min(Math.max(digits, before + least), before + most))
  return `${formatNumber(value, shown)} ${unit.name}`
}

/** As near as a conductor of the next size made differs by strand and maker. Common practice, no source. */
const nearGauge = 0.05

/** A conductor in wire gauges, which is how inch sections are known: `2/0 AWG`, `about 2/0 AWG`, `between 3/0 and 4/0 AWG`; above the largest in
 * thousands of circular mils. */
function formatGauge(area: number): string {
  const off = (gauge: string) => Math.abs((gaugeArea(gauge) ?? 0) / area - 1)
  const nearest = gauges.reduce((best, gauge) => (off(gauge) < off(best) ? gauge : best))
  if (off(nearest) < 1e-6) return `${nearest} AWG`
  const sae = gauges.find((gauge) => Math.abs((saeArea(gauge) ?? 0) / area - 1) < 1e-6)
  if (sae !== undefined) return `${sae} SAE`
  if (off(nearest) <= nearGauge) return `about ${nearest} AWG`
  const above = gauges.findIndex((gauge) => (gaugeArea(gauge) ?? 0) < area)
  const kcmil = findUnit('kcmil')
  if (above === 0 && kcmil) return `about ${formatDigits(area, kcmil, 3)}`
  const [smaller, larger] = [gauges[above], gauges[above - 1]]
  return smaller === undefined
    ? `below ${larger ?? gauges.at(-1)} AWG`
    : `between ${smaller} and ${larger} AWG`
}

/** `26 mm`; in the inch system `1.024 in`. Conductor sections are shown as wire gauges there. */
export function formatSi(si: number, kind: Kind, system: UnitSystem = 'metric', digits = 4): string {
  if (kind === 'area' && system === 'inch' && si > 0) return formatGauge(si)
  const unit = shownUnit(kind, si, system)
  return unit ? formatDigits(si, unit, digits) : formatNumber(si, digits)
}

/** With no more significant digits than three, whatever is usual for the kind: `72.3 mm`. */
export function formatAbout(si: number, kind: Kind, system: UnitSystem = 'metric'): string {
  const unit = shownUnit(kind, si, system)
  return unit ? `${formatNumber(inUnit(si, unit), 3)} ${unit.name}` : formatNumber(si, 3)
}

/** With three significant digits in a unit of its name: `2.4 h`, `60 nmi`. */
export function formatAboutIn(si: number, name: string): string {
  const unit = findUnit(name)
  return unit ? `${formatNumber(inUnit(si, unit), 3)} ${unit.name}` : formatNumber(si, 3)
}

/** In the job's own system with the other in brackets, when they differ: `26 mm (1.024 in)`. */
export function formatBoth(si: number, kind: Kind, system: UnitSystem = 'metric', digits = 4): string {
  const own = formatSi(si, kind, system, digits)
  const other = formatSi(si, kind, system === 'metric' ? 'inch' : 'metric', digits)
  return own === other ? own : `${own} (${other})`
}

/** In the unit itself, whatever its size: `26000 mm`. */
export const formatIn = (si: number, unit: Unit): string => formatDigits(si, unit, 4)

/** `24 mm to 29 mm`, `at most 0.1 mm`, `at least 4`, each amount in the words of `show`. */
export function formatBandWith(band: Band, show: (si: number) => string): string {
  if (band.low !== undefined && band.low === band.high) return `exactly ${show(band.low)}`
  if (band.low !== undefined && band.high !== undefined) return `${show(band.low)} to ${show(band.high)}`
  if (band.high !== undefined) return `at most ${show(band.high)}`
  return band.low === undefined ? 'any' : `at least ${show(band.low)}`
}

export const formatBand = (band: Band, kind: Kind, system: UnitSystem = 'metric'): string =>
  formatBandWith(band, (si) => formatSi(si, kind, system))
