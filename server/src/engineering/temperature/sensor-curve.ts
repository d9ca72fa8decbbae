import { inRange } from '../guard.ts'
import { ktyRange, ktyResistance, ktyTemperature } from './kty84.ts'
import { platinumRange, platinumResistance, platinumTemperature } from './platinum.ts'
import { thermistorRange, thermistorResistance, thermistorTemperature } from './thermistor.ts'

interface Point {
  readonly celsius: number
  readonly ohms: number
}

/** What gives the resistance of a sensor at a temperature. Points rise in temperature; their resistances all rise or all fall. */
export type SensorCurve =
  | { readonly kind: 'platinum'; readonly r0: number }
  | { readonly kind: 'kty84-130' }
  | { readonly kind: 'ntc'; readonly r25: number; readonly beta: number }
  | { readonly kind: 'points'; readonly points: readonly Point[] }

const zero = 273.15

/** Between two points: the logarithm of the resistance over 1/T, which is exact for a thermistor with one B from point to point and near enough for others. */
const scaled = ({ celsius, ohms }: Point) => ({ x: 1 / (zero + celsius), y: Math.log(ohms) })

/** Temperatures that a sensor is known for, °C. Undefined for points of which none can be made: fewer than two, resistances that are zero or turn.
 * @example sensorRange({ kind: 'kty84-130' }) // { low: -40, high: 300 } */
export function sensorRange(curve: SensorCurve): { readonly low: number; readonly high: number } | undefined {
  switch (curve.kind) {
    case 'platinum':
      return platinumRange
    case 'kty84-130':
      return ktyRange
    case 'ntc':
      return thermistorRange
    case 'points': {
      const { points } = curve
      const [first, last] = [points[0], points.at(-1)]
      if (!first || !last || first === last || first.celsius <= -zero) return undefined
      const steps = points.slice(1).map((point, i) => {
        const before = points[i] ?? first
        return point.celsius > before.celsius ? Math.sign(point.ohms - before.ohms) : 0
      })
      const turns = steps.some((step) => step === 0 || step !== steps[0])
      return turns || points.some(({ ohms }) => !(ohms > 0))
        ? undefined
        : { low: first.celsius, high: last.celsius }
    }
  }
}

/** Resistance of a sensor, Ω, at `celsius`; undefined where it is not known for that: beyond the range of `sensorRange`.
 * @example sensorResistance({ kind: 'platinum', r0: 100 }, 150) // ≈ 157.33 */
export function sensorResistance(curve: SensorCurve, celsius: number): number | undefined {
  const range = sensorRange(curve)
  if (!range || !(celsius >= range.low && celsius <= range.high)) return undefined
  switch (curve.kind) {
    case 'platinum':
      return platinumResistance({ celsius, r0: curve.r0 })
    case 'kty84-130':
      return ktyResistance(celsius)
    case 'ntc':
      return thermistorResistance({ celsius, r25: curve.r25, beta: curve.beta })
    case 'points': {
      const { points } = curve
      const end = points.findIndex((point, i) => i > 0 && point.celsius >= celsius)
      const [from, to] = [points[end - 1], points[end]]
      if (!from || !to) return undefined
      const [p, q] = [scaled(from), scaled(to)]
      return Math.exp(p.y + ((q.y - p.y) * (1 / (zero + celsius) - p.x)) / (q.x - p.x))
    }
  }
}

/** What a reading of a sensor says: a temperature, °C, or that it is beyond the coldest or hottest the sensor is known for. */
export type SensorReading =
  | { readonly is: 'temperature'; readonly celsius: number }
  | { readonly is: 'colder' | 'hotter'; readonly end: number }

/** Temperature that `ohms` (0 or more, else OutOfRange) of a sensor mean. Undefined where its points make no curve.
 * @example sensorReading({ kind: 'platinum', r0: 1000 }, 0) // { is: 'colder', end: -200 } */
export function sensorReading(curve: SensorCurve, ohms: number): SensorReading | undefined {
  inRange('resistance (ohm)', ohms, 0, 1e15)
  const range = sensorRange(curve)
  const ends = range && [sensorResistance(curve, range.low), sensorResistance(curve, range.high)]
  const [cold, hot] = ends ?? []
  if (!range || cold === undefined || hot === undefined) return undefined
  const rises = hot > cold
  if (rises ? ohms < cold : ohms > cold) return { is: 'colder', end: range.low }
  if (rises ? ohms > hot : ohms < hot) return { is: 'hotter', end: range.high }
  return { is: 'temperature', celsius: temperatureIn(curve, ohms) }
}

/** Within the range of the curve. */
function temperatureIn(curve: SensorCurve, ohms: number): number {
  switch (curve.kind) {
    case 'platinum':
      return platinumTemperature({ ohms, r0: curve.r0 })
    case 'kty84-130':
      return ktyTemperature(ohms)
    case 'ntc':
      return thermistorTemperature({ ohms, r25: curve.r25, beta: curve.beta })
    case 'points': {
      const { points } = curve
      const rises = (points.at(-1)?.ohms ?? 0) > (points[0]?.ohms ?? 0)
      const end = points.findIndex((point, i) => i > 0 && (rises ? point.ohms >= ohms : point.ohms <= ohms))
      const [from, to] = [points[end - 1], points[end]]
      if (!from || !to) return points.at(-1)?.celsius ?? Number.NaN
      const [p, q] = [scaled(from), scaled(to)]
      return 1 / (p.x + ((q.x - p.x) * (Math.log(ohms) - p.y)) / (q.y - p.y)) - zero
    }
  }
}
