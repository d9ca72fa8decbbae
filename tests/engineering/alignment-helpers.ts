import { type Face, type FaceFit, fitFace } from '../../server/src/engineering/alignment/face.ts'
import type { Foot } from '../../server/src/engineering/alignment/feet.ts'
import {
  type Covariance,
  type InPlanes,
  inBothPlanes,
} from '../../server/src/engineering/alignment/planes.ts'
import type { Line, Pose } from '../../server/src/engineering/alignment/pose.ts'
import type { Reading } from '../../server/src/engineering/alignment/readings.ts'
import type { FootMove } from '../../server/src/engineering/alignment/rigid-move.ts'
import { fitRim, type Rim, type RimFit } from '../../server/src/engineering/alignment/rim.ts'
import type { Result } from '../../server/src/engineering/result.ts'
import { plus, type Uncertain } from '../../server/src/quantity/uncertainty.ts'

export const inch = 0.0254
export const deg = Math.PI / 180
export const mm = 1e-3

/** The value of a result that must be good. */
export function ok<T, P>(result: Result<T, P>): T {
  if (!result.ok) throw new Error(`expected a value, got ${JSON.stringify(result.problem)}`)
  return result.value
}

/** The problem of a result that must be bad. */
export function problem<T, P>(result: Result<T, P>): P {
  if (result.ok) throw new Error(`expected a problem, got ${JSON.stringify(result.value)}`)
  return result.problem
}

/** Readings at top, starboard, bottom, port, in that order. */
export const round = (values: readonly number[], unit = 1): Reading[] =>
  values.map((value, i) => ({ angle: i * 90 * deg, value: value * unit }))

export const face = (readings: readonly Reading[], radius: number, gaugeStep = 0.02 * mm): FaceFit =>
  ok(fitFace(readings, { radius, gaugeStep }))

export const rim = (readings: readonly Reading[], gaugeStep = 0.02 * mm): RimFit =>
  ok(fitRim(readings, { gaugeStep }))

export type TruePose = { readonly oz: number; readonly oy: number; readonly tv: number; readonly th: number }

/** Gap at radius r and angle a by solid geometry: where the line parallel to the shaft axis through that
 * point meets the machine face, the plane square to the machine axis (1, th, tv) through the flange
 * centre. */
export function gapOf({ oz, oy, tv, th }: TruePose, g0: number, r: number, a: number): number {
  const [y, z] = [r * Math.sin(a) - oy, r * Math.cos(a) - oz]
  return g0 - (th * y + tv * z)
}

/** Step outward of a machine rim of radius R + step over a shaft rim of radius R at angle a: exact, two
 * circles. */
export function rimOf({ oz, oy }: TruePose, R: number, step: number, a: number): number {
  const along = oz * Math.cos(a) + oy * Math.sin(a)
  const across = oz * Math.sin(a) - oy * Math.cos(a)
  return along + Math.sqrt((R + step) ** 2 - across ** 2) - R
}

export const feetOf = (...stations: readonly (readonly [x: number, y: number])[]): Foot[] =>
  stations.map(([x, y], i) => ({ name: `foot ${i + 1}`, x, y }))

/** Foot moves without uncertainty: [vertical, horizontal] for each foot. */
export const moves = (feet: readonly Foot[], by: readonly (readonly [number, number])[]): FootMove[] =>
  feet.map((foot, i) => ({
    ...foot,
    vertical: { value: by[i]?.[0] ?? 0, standard: 0 },
    horizontal: { value: by[i]?.[1] ?? 0, standard: 0 },
  }))

/** Numbers in [0, 1) that are the same in every run (mulberry32). */
export function fixedRandom(start: number): () => number {
  let state = start
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

/** Pose after a rigid move of the machine: both planes add up. */
export const movedPose = (pose: Pose, move: InPlanes<Line>): Pose => ({
  ...inBothPlanes((plane) => ({
    offset: plus(pose[plane].offset, move[plane].offset),
    slope: plus(pose[plane].slope, move[plane].slope),
    covariance: pose[plane].covariance + move[plane].covariance,
  })),
  offsetBasis: pose.offsetBasis,
})

/** Gap that a face shows at an angle (rad), at its own radius, by the formula of docs/engineering/alignment.md. */
export function gapAt({ radius, gap, slope, covariance }: Face, angle: number): Uncertain {
  const j = [1, -radius * Math.cos(angle), -radius * Math.sin(angle)]
  const values = [gap.value, slope.vertical.value, slope.horizontal.value]
  return combined(j, values, covariance)
}

/** How far the machine rim stands outward of the shaft rim at an angle (rad). */
export function rimAt({ step, offset, covariance }: Rim, angle: number): Uncertain {
  const j = [1, Math.cos(angle), Math.sin(angle)]
  return combined(j, [step.value, offset.vertical.value, offset.horizontal.value], covariance)
}

/** j b and its uncertainty, √(j C jᵀ). */
const combined = (j: readonly number[], b: readonly number[], C: Covariance): Uncertain => ({
  value: j.reduce((sum, factor, i) => sum + factor * (b[i] ?? 0), 0),
  standard: Math.sqrt(
    Math.max(
      0,
      j.reduce((sum, a, i) => sum + j.reduce((s, c, k) => s + a * c * (C[i]?.[k] ?? 0), 0), 0),
    ),
  ),
})
