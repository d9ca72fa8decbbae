// Figures in words. Each sentence that states a length, an angle or another amount takes it from here or from format.ts, in SI, and so never names a
// unit itself: a factor of a thousand cannot slip in between a value and its unit.
import { formatFixed, formatNumber } from './format.ts'
import type { UnitSystem } from './kinds.ts'
import { expanded, type Uncertain } from './uncertainty.ts'

interface Shown {
  /** Its size, SI. */
  readonly size: number
  readonly name: string
  /** Decimals of a figure: finer than any feeler, and no finer than a dial. */
  readonly decimals: number
}

const length: Readonly<Record<UnitSystem, Shown>> = {
  metric: { size: 1e-3, name: 'mm', decimals: 2 },
  inch: { size: 0.0254, name: 'in', decimals: 4 },
}
const slope: Shown = { size: 1e-3, name: 'mrad', decimals: 2 }

const fixed = (si: number, { size, name, decimals }: Shown, more = 0): string =>
  `${formatFixed(si / size, decimals + more)} ${name}`

/** The value with its expanded uncertainty, to the digit that the uncertainty still fills: a small one must not read as none. */
function sure(u: Uncertain, { size, name, decimals }: Shown): string {
  const U = expanded(u) / size
  const places = U > 0 && U < 10 ** -decimals ? decimals + 1 : decimals
  return `${formatFixed(u.value / size, places)} ± ${formatFixed(U, places)} ${name}`
}

/** `0.37 mm`, or in the inch system `0.0146 in`. */
export const formatLength = (si: number, system: UnitSystem): string => fixed(si, length[system])

/** Whether a length is shown as nothing. */
export const isFormattedAsZero = (si: number, system: UnitSystem): boolean =>
  Number.parseFloat(formatLength(Math.abs(si), system)) === 0

/** `0.26 ± 0.02 mm`. */
export const formatUncertain = (u: Uncertain, system: UnitSystem): string => sure(u, length[system])

/** `2.36 mrad`. */
export const formatSlope = (rad: number): string => fixed(rad, slope)

/** `2.36 ± 0.15 mrad`. */
export const formatUncertainSlope = (u: Uncertain): string => sure(u, slope)

/** What is allowed in the unit, to a decimal more than other lengths where it has one, and never more than it is. */
function limitIn(si: number, { size, decimals }: Shown): { readonly value: number; readonly places: number } {
  const down = (places: number) => Math.floor((si / size) * 10 ** places + 1e-6) / 10 ** places
  const places = down(decimals + 1) > down(decimals) ? decimals + 1 : decimals
  return { value: down(places), places }
}

/** What is allowed, with one digit more than other lengths where it has them, and never more than it is: a limit of 0.125 mm is not 0.13 mm. */
export function formatLimit(si: number, system: UnitSystem): string {
  const { value, places } = limitIn(si, length[system])
  return `${formatFixed(value, places)} ${length[system].name}`
}

/** `0.26, limit 0.10 mm`: the value with as many decimals as it takes to read on its side of the limit. */
export function formatOfLimit(si: number, limit: number, system: UnitSystem): string {
  const { size, decimals } = length[system]
  const allowed = limitIn(limit, length[system]).value
  const at = [0, 1, 2].map((more) => formatFixed(si / size, decimals + more))
  const aside = at.find((text) => Math.sign(Number(text) - allowed) === Math.sign(si / size - allowed))
  return `${aside ?? at[0]}, limit ${formatLimit(limit, system)}`
}

/** The step of a gauge, with its own digits: `0.02 mm`, `0.0015 in`. */
export const formatGaugeStep = (step: number, system: UnitSystem): string =>
  `${formatNumber(step / length[system].size, 4)} ${length[system].name}`

/** Shims and packs with their own digits, at least those of other lengths, in one unit: `0.50 + 0.025 mm`, `2.00 to 0.60 mm`. */
export function formatShims(lengths: readonly number[], system: UnitSystem, tie: string): string {
  const { size, name, decimals } = length[system]
  return `${lengths
    .map((si) => {
      const short = formatFixed(si / size, decimals)
      return Math.abs(Number(short) * size - si) < 1e-8 ? short : formatFixed(si / size, decimals + 1)
    })
    .join(tie)} ${name}`
}

/** One shim: `0.20 mm`, `0.025 mm`. */
export const formatShim = (si: number, system: UnitSystem): string => formatShims([si], system, '')

/** What is set by rule and straightedge. */
const rough: Readonly<Record<UnitSystem, Shown & { readonly step: number }>> = {
  metric: { size: 1e-3, name: 'mm', decimals: 1, step: 0.5 },
  inch: { size: 0.0254, name: 'in', decimals: 2, step: 0.02 },
}

/** To half a millimetre, or two hundredths of an inch: `15.0 mm`, `0.60 in`. */
export function formatRough(si: number, system: UnitSystem): string {
  const { size, step } = rough[system]
  return fixed(Math.round(si / size / step) * step * size, rough[system])
}

/** The same, rounded up: room that has to be enough. */
export function formatRoom(si: number, system: UnitSystem): string {
  const { size, step } = rough[system]
  return fixed(Math.ceil(si / size / step - 1e-6) * step * size, rough[system])
}

/** Lengths of one comparison in one unit, with as many decimals as it takes to tell them apart: `0.26, limit 0.10 mm`. */
export function formatTogether(lengths: readonly number[], system: UnitSystem, tie: string): string {
  const { size, name, decimals } = length[system]
  const at = (places: number) => lengths.map((si) => formatFixed(si / size, places))
  const differ = [decimals, decimals + 1, decimals + 2].find(
    (places) => new Set(at(places)).size === lengths.length,
  )
  return `${at(differ ?? decimals).join(tie)} ${name}`
}

/** `202.2 A`, with so many decimals. */
export const formatAmperes = (amps: number, decimals: number): string =>
  fixed(amps, { size: 1, name: 'A', decimals })

/** A share of one, in per cent: `2.35 %`. */
export const formatShare = (share: number, digits = 3): string => `${formatNumber(share * 100, digits)} %`
