import { inRange, positive } from '../guard.ts'

/** Up to here a fuse carries its rating, °C. */
const fullUpToC = 40
/** Per kelvin above. */
const lessPerKelvin = 0.005

/** What a fuse of `rating` (A, > 0) carries on and on in an ambient of so many °C (−60 to 120), A; else OutOfRange: 0.5 % less for each kelvin above
 * 40 °C, and no more below. Printed in one fuse maker's guide: an assumption for any other make, and for breakers, whose maker gives a figure of his own.
 * Source: a fuse maker's guide.
 * @example ratingInAmbient(100, 60) // ≈ 90 */
export const ratingInAmbient = (rating: number, ambientC: number): number =>
  positive('rating', rating) *
  (1 - lessPerKelvin * Math.max(0, inRange('ambient in °C', ambientC, -60, 120) - fullUpToC))
