import { plus, type Uncertain } from '../../quantity/uncertainty.ts'
import { coordinate, uncertain } from '../guard.ts'
import type { Result } from '../result.ts'
import type { Face } from './face.ts'
import { atOneStation, type FeetProblem, type Foot } from './feet.ts'
import { estimator } from './least-squares.ts'
import { type Covariance, type InPlanes, inBothPlanes, pick } from './planes.ts'
import type { Line } from './pose.ts'
import type { Rim } from './rim.ts'

/** What a foot was moved by, m: vertical + raised, horizontal + to starboard. A foot that was left alone
 * counts, with zeros. */
export type FootMove = Foot & InPlanes<Uncertain>

/** A move of the whole machine: change of its axis in both planes; roll (rad, + starboard side up), absent
 * when the feet stand in one line fore and aft; and per foot how far its own move differs from the rigid
 * one (m): a foot left hanging or strained. */
export type RigidMove = InPlanes<Line> & {
  readonly roll?: Uncertain
  readonly misfit: readonly (Pick<Foot, 'name'> & InPlanes<number>)[]
}

/** Below this, 1 - r² of the feet's x and y: they stand in one oblique line. */
const inLine = 1e-6

function obliqueLine(xs: readonly number[], ys: readonly number[]): boolean {
  const centred = (v: readonly number[]): readonly number[] =>
    v.map((a) => a - v.reduce((s, b) => s + b, 0) / v.length)
  const dot = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((s, v, i) => s + v * (b[i] ?? 0), 0)
  const [x, y] = [centred(xs), centred(ys)]
  return 1 - dot(x, y) ** 2 / (dot(x, x) * dot(y, y)) < inLine
}

/** The rigid move of the machine that fits given foot moves best, by least squares over the feet: vertical
 * moves to change of offset, slope and roll, lateral moves to change of offset and slope. With four feet
 * out of step the machine rocks and this is the middle way; `misfit` shows it. Roll sets the axis aside by
 * roll times its height over the feet, which is not in the result. m, rad. Feet at one station, or in one
 * oblique line, is returned as a problem. [derived]
 * @example rigidMove([{ name: 'aft', x: 0.18, y: 0, ...inBothPlanes(() => exactly(0)) }, { name: 'fwd', x:
 * 0.56, y: 0, ...inBothPlanes(() => exactly(1e-3)) }]).value.vertical.offset.value // ≈ -4.737e-4 */
export function rigidMove(moves: readonly FootMove[]): Result<RigidMove, FeetProblem> {
  const rigid = rigidMachine(moves)
  return rigid.ok ? { ok: true, value: rigid.value(moves) } : rigid
}

/** `rigidMove` for feet that stay where they are while their moves change: many choices of moves are tried on one machine. The moves
 * are given in the order of the feet. m, rad; problems and OutOfRange as `rigidMove`. [derived]
 * @example rigidMachine([{ name: 'aft', x: 0.18, y: 0 }, { name: 'fwd', x: 0.56, y: 0 }]).value([inBothPlanes(() =>
 * exactly(0)), inBothPlanes(() => exactly(1e-3))]).vertical.offset.value // ≈ -4.737e-4 */
export function rigidMachine(
  feet: readonly Foot[],
): Result<(moves: readonly InPlanes<Uncertain>[]) => RigidMove, FeetProblem> {
  const xs = feet.map((foot) => coordinate(`x of foot ${foot.name}`, foot.x))
  const ys = feet.map((foot) => coordinate(`y of foot ${foot.name}`, foot.y))
  const names = feet.map((foot) => foot.name)
  if (atOneStation(xs)) return { ok: false, problem: { type: 'feet-at-one-station', feet: names } }
  const rolls = !atOneStation(ys)
  if (rolls && obliqueLine(xs, ys)) return { ok: false, problem: { type: 'feet-in-line', feet: names } }

  const rows = {
    vertical: feet.map((_, i) => [1, xs[i] ?? 0, ...(rolls ? [ys[i] ?? 0] : [])]),
    horizontal: xs.map((x) => [1, x]),
  }
  const even = feet.map(() => 1)
  const fits = inBothPlanes((plane) => estimator(rows[plane], even))
  return { ok: true, value: moved }

  function moved(moves: readonly InPlanes<Uncertain>[]): RigidMove {
    const fit = inBothPlanes((plane) => {
      const by = feet.map((foot, i) => uncertain(`move of foot ${foot.name}`, moves[i]?.[plane] ?? unknown))
      return fits[plane](
        by.map((u) => u.value),
        by.map((u) => u.standard),
      )
    })
    const line = inBothPlanes((plane): Line => {
      const { values, covariance } = fit[plane]
      return {
        offset: pick(values, covariance, 0),
        slope: pick(values, covariance, 1),
        covariance: covariance[0]?.[1] ?? 0,
      }
    })
    const rigid = (plane: keyof typeof rows, i: number): number =>
      (rows[plane][i] ?? []).reduce((sum, v, k) => sum + v * (fit[plane].values[k] ?? 0), 0)
    return {
      ...line,
      ...(rolls && { roll: pick(fit.vertical.values, fit.vertical.covariance, 2) }),
      misfit: feet.map((foot, i) => ({
        name: foot.name,
        ...inBothPlanes((plane) => (moves[i]?.[plane].value ?? Number.NaN) - rigid(plane, i)),
      })),
    }
  }
}

/** Fewer moves than feet are refused like any other figure that is none. */
const unknown: Uncertain = { value: Number.NaN, standard: Number.NaN }

const widened = (C: Covariance, by: InPlanes<Uncertain>): Covariance =>
  C.map((r, i) =>
    r.map((v, j) => v + (i !== j || i === 0 ? 0 : (i === 1 ? by.vertical : by.horizontal).standard ** 2)),
  )

const sum = (a: InPlanes<Uncertain>, b: InPlanes<Uncertain>): InPlanes<Uncertain> =>
  inBothPlanes((plane) => plus(a[plane], b[plane]))

/** What the face should show after a move: `gapVariation` then gives the predicted one. The
 * mean gap is taken as unchanged, which holds only as long as the machine does not slide fore and aft:
 * tilting about feet below the axis shifts it a little. Compare differences of gaps, not single gaps.
 * @example movedFace({ radius: 0.055, gap: exactly(2e-3), slope: { vertical: exactly(-2e-3), horizontal:
 * exactly(0) }, covariance: [] }, { vertical: { offset: exactly(-1e-4), slope: exactly(1e-3), covariance:
 * 0 }, horizontal: { offset: exactly(0), slope: exactly(0), covariance: 0 }
 * }).slope.vertical.value // ≈ -1e-3 */
export function movedFace(face: Face, move: InPlanes<Line>): Face {
  const change = { vertical: move.vertical.slope, horizontal: move.horizontal.slope }
  const { radius, gap } = face
  return { radius, gap, slope: sum(face.slope, change), covariance: widened(face.covariance, change) }
}

/** What a rim at the coupling face should show after a move: each offset (m, + up, + to starboard) grows by that of the move there. `move`: how
 * the axis of the machine moves, its offset at the coupling face (m) and its slope (rad), which leaves a rim in that plane as it is. The step between
 * the rims stays. Errors of reading and move are independent, so their variances add up (JCGM 100 (GUM) 5.1.2). Source: rigid body, small angles
 * [derived].
 * @example movedRim({ step: exactly(0), offset: { vertical: exactly(1e-4), horizontal: exactly(0) },
 * covariance: [] }, { vertical: { offset: exactly(-1e-4), slope: exactly(1e-3), covariance: 0 },
 * horizontal: { offset: exactly(0), slope: exactly(0), covariance: 0 } }).offset.vertical.value // ≈ 0 */
export function movedRim(rim: Rim, move: InPlanes<Line>): Rim {
  const change = { vertical: move.vertical.offset, horizontal: move.horizontal.offset }
  return { step: rim.step, offset: sum(rim.offset, change), covariance: widened(rim.covariance, change) }
}
