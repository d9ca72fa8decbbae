import { inRange, whole } from '../guard.ts'

/** What a resistance is held against, Ω; absent ends are free. */
interface Limit {
  readonly low?: number
  readonly high?: number
}

/** Limits of a trip PTC for one sensor, Ω: at most 550 up to 5 K below where it switches, at least 1330 from 5 K above, at least 4000 from 15 K above. */
const most = 550
const least = 1330
const leastHot = 4000

/** What the resistance of a trip PTC, or of `count` in series (whole, 1 to 9), may be at `celsius`, Ω, where it switches at `switchesAt` (both -60 to 250 °C, else
 * OutOfRange). Within 5 K of that nothing is stated. Source: DIN 44081, as quoted in instructions of an industrial motor.
 * @example tripPtcLimit({ celsius: 20, switchesAt: 145, count: 3 }) // { high: 1650 } */
export function tripPtcLimit(given: {
  readonly celsius: number
  readonly switchesAt: number
  readonly count: number
}): Limit {
  const celsius = inRange('temperature in °C', given.celsius, -60, 250)
  const above = celsius - inRange('switching temperature in °C', given.switchesAt, -60, 250)
  const count = whole('sensors in series', given.count, 1, 9)
  if (above <= -5) return { high: most * count }
  if (above < 5) return {}
  return { low: (above < 15 ? least : leastHot) * count }
}
