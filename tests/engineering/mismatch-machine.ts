// A machine on four feet for the tests of mismatches: what a move of its stations does to it, and how it is read. Geometry alone.
import type { AxisReading } from '../../server/src/engineering/alignment/mismatch.ts'

export const mm = 1e-3
export const feet = [
  { name: 'aft-port', x: 0.18, y: -0.14 },
  { name: 'aft-stbd', x: 0.18, y: 0.14 },
  { name: 'fwd-port', x: 0.56, y: -0.14 },
  { name: 'fwd-stbd', x: 0.56, y: 0.14 },
]

export interface Axis {
  readonly oz: number
  readonly tv: number
  readonly oy: number
  readonly th: number
}

/** A machine moved at its stations: the line through both. */
export const moved = (
  axis: Axis,
  [aft, fwd]: readonly [number, number],
  [aftY, fwdY]: readonly [number, number] = [0, 0],
): Axis => {
  const tv = (fwd - aft) / (0.56 - 0.18)
  const th = (fwdY - aftY) / (0.56 - 0.18)
  return {
    oz: axis.oz + aft - tv * 0.18,
    tv: axis.tv + tv,
    oy: axis.oy + aftY - th * 0.18,
    th: axis.th + th,
  }
}

export const uSlope = 0.08e-3
export const uOffset = 0.006 * mm
export const read = ({ oz, tv, oy, th }: Axis, offsets = true): AxisReading => ({
  slope: {
    vertical: { value: tv, standard: uSlope },
    horizontal: { value: th, standard: uSlope },
  },
  ...(offsets && {
    offset: {
      vertical: { value: oz, standard: uOffset },
      horizontal: { value: oy, standard: uOffset },
    },
  }),
})
export const noted = (
  [aft, fwd]: readonly [number, number],
  [aftY, fwdY]: readonly [number, number] = [0, 0],
) =>
  [
    [aft, aftY],
    [aft, aftY],
    [fwd, fwdY],
    [fwd, fwdY],
  ].map(([up = 0, across = 0]) => ({
    vertical: { value: up, standard: 0.01 * mm },
    horizontal: { value: across, standard: 0.01 * mm },
    byNut: up,
  }))

export const start: Axis = { oz: 0.1 * mm, tv: -2.4e-3, oy: -0.05 * mm, th: 0.6e-3 }
