/** Limits on one value, SI: at least one side is there. `nominal` is what was aimed at, when it was said. */
export interface Band {
  readonly low?: number
  readonly high?: number
  readonly nominal?: number
}

/** Slack of a billionth of the band's own size, so that 24.0 written in inches and back is still inside. */
export const slackOf = (band: Band): number =>
  1e-9 * Math.max(Math.abs(band.low ?? 0), Math.abs(band.high ?? 0))

/** Whether `value` (same unit as the band) lies inside the limits, ends included.
 * @example holds({ low: 0.024, high: 0.029 }, 0.026) // true */
export const holds = (band: Band, value: number): boolean =>
  (band.low === undefined || value >= band.low - slackOf(band)) &&
  (band.high === undefined || value <= band.high + slackOf(band))
