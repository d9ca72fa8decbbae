import type { Kind, UnitSystem } from './kinds.ts'
import { circle, circularMil, gaugeDiameter } from './wire-gauge.ts'

/** A unit is a row: its spelling, the kind it measures, and how its numbers become SI. */
export interface Unit {
  readonly name: string
  readonly aliases: readonly string[]
  readonly kind: Kind
  /** SI value of one of it. */
  readonly si: number
  /** Added after scaling: only temperatures read from their own zero have one. */
  readonly offset: number
  /** What it is, for hover. */
  readonly doc: string
  readonly source: string
  /** Set where the number is a name rather than an amount (wire gauges: `2/0`). Gives undefined for a name it does not know. */
  readonly named?: (text: string) => number | undefined
}

const SI = 'SI Brochure, 9th edition'
const NIST = 'NIST SP 811 (2008), appendix B'
const INCH = 0.0254
const POUND = 0.45359237
const GRAVITY = 9.80665
const LBF = POUND * GRAVITY
const TURN = 2 * Math.PI

const unit = (
  kind: Kind,
  name: string,
  si: number,
  doc: string,
  source = SI,
  aliases: readonly string[] = [],
  more: { offset?: number; named?: (text: string) => number | undefined } = {},
): Unit => ({
  kind,
  name,
  si,
  doc,
  source,
  aliases,
  offset: more.offset ?? 0,
  ...(more.named && { named: more.named }),
})

/** Area in m² of an American wire gauge; `1/0` to `4/0`, also written `0` to `0000`, are the sizes above 1. ASTM B258: d = 0.127 mm ·
 * 92^((36 − n)/39).
 * @example gaugeArea('2/0') // ≈ 67.43e-6 */
export function gaugeArea(text: string): number | undefined {
  const aughts = /^0{1,4}$/.test(text) ? text.length : Number(/^([1-4])\/0$/.exec(text)?.[1] ?? 0)
  const plain = /^[1-9]\d?$/.test(text) ? Number(text) : undefined
  const n = aughts > 0 ? 1 - aughts : plain
  if (n === undefined || n > 40) return undefined
  return circle(gaugeDiameter(n))
}

/** Circular mils of cable by SAE gauge, 4 to 12 % less copper than the American wire gauge of the same number. Source: the table of ABYC E-11 as reprinted in
 * two references on boat wiring. */
const saeCircularMils: Readonly<Record<string, number>> = {
  14: 3702,
  12: 5833,
  10: 9343,
  8: 14_810,
  6: 24_538,
  4: 37_360,
  2: 62_450,
  1: 77_790,
  '1/0': 98_980,
  '2/0': 125_100,
  '3/0': 158_600,
  '4/0': 205_500,
}

/** Area in m² of a cable of an SAE gauge from 14 to 4/0; `0` to `0000` are `1/0` to `4/0`.
 * @example saeArea('2/0') // ≈ 63.39e-6 */
export function saeArea(text: string): number | undefined {
  const name = /^0{1,4}$/.test(text) ? `${text.length}/0` : text
  const mils = Object.hasOwn(saeCircularMils, name) ? saeCircularMils[name] : undefined
  return mils === undefined ? undefined : mils * circularMil
}

export const units: readonly Unit[] = [
  unit('length', 'm', 1, 'metre'),
  unit('length', 'cm', 1e-2, 'centimetre'),
  unit('length', 'mm', 1e-3, 'millimetre'),
  unit('length', 'µm', 1e-6, 'micrometre', SI, ['um', 'μm']),
  unit('length', 'km', 1e3, 'kilometre'),
  unit('length', 'in', INCH, 'inch, 25.4 mm exactly', NIST, ['inch', 'inches']),
  unit('length', 'ft', 12 * INCH, 'foot, 12 in', NIST, ['feet']),
  unit('length', 'thou', INCH / 1000, 'thousandth of an inch', NIST, ['mil', 'mils']),
  unit('length', 'nmi', 1852, 'nautical mile, 1852 m', SI),
  unit('area', 'm2', 1, 'square metre', SI, ['m²', 'm^2']),
  unit('area', 'cm2', 1e-4, 'square centimetre', SI, ['cm²', 'cm^2']),
  unit('area', 'mm2', 1e-6, 'square millimetre', SI, ['mm²', 'mm^2', 'sqmm']),
  unit('area', 'in2', INCH ** 2, 'square inch', NIST, ['in²', 'in^2']),
  unit('area', 'CM', circularMil, 'circular mil, the area of a circle 0.001 in across', NIST, ['cmil']),
  unit('area', 'kcmil', 1000 * circularMil, 'a thousand circular mils', NIST, ['MCM']),
  unit('area', 'AWG', Number.NaN, 'American wire gauge: 6, 2, 1/0 … 4/0', 'ASTM B258', ['awg'], {
    named: gaugeArea,
  }),
  unit('area', 'SAE', Number.NaN, 'SAE gauge of cable: 6, 2, 1/0 … 4/0', 'ABYC E-11, as reprinted', ['sae'], {
    named: saeArea,
  }),
  unit('mass', 'kg', 1, 'kilogram'),
  unit('mass', 'g', 1e-3, 'gram'),
  unit('mass', 't', 1e3, 'tonne'),
  unit('mass', 'lb', POUND, 'pound', NIST, ['lbs']),
  unit('mass', 'oz', POUND / 16, 'ounce', NIST),
  unit('time', 's', 1, 'second'),
  unit('time', 'ms', 1e-3, 'millisecond'),
  unit('time', 'min', 60, 'minute', SI),
  unit('time', 'h', 3600, 'hour', SI, ['hours']),
  unit('time', 'd', 86400, 'day', SI, ['days']),
  unit('angle', 'rad', 1, 'radian'),
  unit('angle', 'mrad', 1e-3, 'milliradian: a slope of 1 mm in 1 m'),
  unit('angle', 'deg', Math.PI / 180, 'degree', SI, ['°']),
  unit('angle', 'turn', TURN, 'whole turn', SI, ['turns']),
  unit('angle', 'flat', TURN / 6, 'flat of a hexagon nut, a sixth of a turn', 'geometry of a hexagon', [
    'flats',
  ]),
  unit('rotational speed', 'rpm', TURN / 60, 'revolutions per minute', NIST, ['r/min', 'rev/min', 'min^-1']),
  unit('rotational speed', 'rad/s', 1, 'radian per second'),
  unit('frequency', 'Hz', 1, 'hertz'),
  unit('frequency', 'kHz', 1e3, 'kilohertz'),
  unit('speed', 'm/s', 1, 'metre per second'),
  unit('speed', 'km/h', 1 / 3.6, 'kilometre per hour'),
  unit('speed', 'kn', 1852 / 3600, 'knot, one nautical mile per hour', SI, ['kt', 'kts']),
  unit('speed', 'ft/s', 12 * INCH, 'foot per second', NIST),
  unit('force', 'N', 1, 'newton'),
  unit('force', 'kN', 1e3, 'kilonewton'),
  unit('force', 'lbf', LBF, 'pound-force', NIST),
  unit('torque', 'N·m', 1, 'newton metre', SI, ['Nm', 'N.m', 'N-m']),
  unit('torque', 'kN·m', 1e3, 'kilonewton metre', SI, ['kNm', 'kN.m']),
  unit('torque', 'lbf·ft', LBF * 12 * INCH, 'pound-force foot', NIST, [
    'lbf.ft',
    'lbf-ft',
    'ft·lbf',
    'ft.lbf',
    'ft-lbf',
    'lb-ft',
    'ft-lb',
  ]),
  unit('torque', 'lbf·in', LBF * INCH, 'pound-force inch', NIST, [
    'lbf.in',
    'lbf-in',
    'in·lbf',
    'in.lbf',
    'in-lbf',
    'lb-in',
    'in-lb',
  ]),
  unit('energy', 'J', 1, 'joule'),
  unit('energy', 'kJ', 1e3, 'kilojoule'),
  unit('energy', 'Wh', 3600, 'watt hour', SI, ['W·h']),
  unit('energy', 'kWh', 3.6e6, 'kilowatt hour', SI, ['kW·h']),
  unit('power', 'W', 1, 'watt'),
  unit('power', 'kW', 1e3, 'kilowatt'),
  unit('power', 'MW', 1e6, 'megawatt'),
  unit('power', 'hp', 550 * 12 * INCH * LBF, 'mechanical horsepower, 550 ft·lbf per second', NIST),
  unit('pressure', 'Pa', 1, 'pascal'),
  unit('pressure', 'kPa', 1e3, 'kilopascal'),
  unit('pressure', 'MPa', 1e6, 'megapascal', SI, ['N/mm2', 'N/mm²']),
  unit('pressure', 'GPa', 1e9, 'gigapascal'),
  unit('pressure', 'bar', 1e5, 'bar', NIST),
  unit('pressure', 'psi', LBF / INCH ** 2, 'pound-force per square inch', NIST),
  unit('pressure', 'ksi', (1e3 * LBF) / INCH ** 2, 'a thousand psi', NIST),
  unit('density', 'kg/m3', 1, 'kilogram per cubic metre', SI, ['kg/m³']),
  unit('density', 'g/cm3', 1e3, 'gram per cubic centimetre', SI, ['g/cm³']),
  unit('voltage', 'V', 1, 'volt'),
  unit('voltage', 'mV', 1e-3, 'millivolt'),
  unit('voltage', 'kV', 1e3, 'kilovolt'),
  unit('current', 'A', 1, 'ampere', SI, ['amps']),
  unit('current', 'mA', 1e-3, 'milliampere'),
  unit('current', 'kA', 1e3, 'kiloampere'),
  unit('resistance', 'ohm', 1, 'ohm', SI, ['Ω', '\u2126']),
  unit('resistance', 'mohm', 1e-3, 'milliohm', SI, ['mΩ', 'm\u2126']),
  unit('resistance', 'kohm', 1e3, 'kiloohm', SI, ['kΩ', 'k\u2126']),
  unit('resistance', 'Mohm', 1e6, 'megaohm', SI, ['MΩ', 'M\u2126']),
  unit('capacitance', 'F', 1, 'farad'),
  unit('capacitance', 'mF', 1e-3, 'millifarad'),
  unit('capacitance', 'µF', 1e-6, 'microfarad', SI, ['uF', 'μF']),
  unit('charge', 'Ah', 3600, 'ampere hour', SI, ['A·h']),
  unit('charge', 'C', 1, 'coulomb'),
  unit('temperature', 'K', 1, 'kelvin'),
  unit('temperature', 'degC', 1, 'degree Celsius', SI, ['°C', '℃'], { offset: 273.15 }),
  unit('temperature', 'degF', 5 / 9, 'degree Fahrenheit', NIST, ['°F'], { offset: 273.15 - (32 * 5) / 9 }),
  unit('ratio', '%', 0.01, 'per cent'),
]

const byName = new Map(units.flatMap((u) => [u.name, ...u.aliases].map((name) => [name, u] as const)))

export const findUnit = (name: string): Unit | undefined => byName.get(name)

/** The metric units are the SI's by powers of ten; all others that a boat is built in are inch units. */
export const unitSystemOf = ({ si }: Unit): UnitSystem =>
  Math.abs(Math.log10(si) - Math.round(Math.log10(si))) < 1e-9 ? 'metric' : 'inch'

export const unitsOf = (kind: Kind): readonly Unit[] => units.filter((u) => u.kind === kind)

/** One of the signs that look alike: micro and mu, ohm and omega. */
const lookingAlike = (text: string): string => text.normalize('NFC').replaceAll('\u00b5', '\u03bc')

/** How else a unit may be written, for people: of spellings that look alike one. */
export function otherSpellings({ name, aliases }: Unit): readonly string[] {
  const seen = [name, ...aliases].map(lookingAlike)
  return aliases.filter((_, i) => seen.indexOf(seen[i + 1] ?? '') === i + 1)
}

/** The name of a unit behind a number: `flats` where it is not one and the unit has a plural. */
export const nameBehind = (number: string, { name, aliases }: Unit): string =>
  number !== '1' && aliases.includes(`${name}s`) ? `${name}s` : name
