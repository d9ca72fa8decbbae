import { OutOfRange } from '../../quantity/out-of-range.ts'
import type { Uncertain } from '../../quantity/uncertainty.ts'
import type { FaceFit } from './face.ts'
import type { Goodness } from './harmonic.ts'
import { type Covariance, type InPlanes, inBothPlanes, pick, variance } from './planes.ts'
import type { RimFit } from './rim.ts'

/** What is left when two positions of the flange are averaged, and the run-out that went out by it: total indicator reading, m. */
export type WithoutRunOut<T> = { readonly mean: T; readonly runOut: Uncertain }

const middle = (a: Uncertain, b: Uncertain) => (a.value + b.value) / 2

/** Rounding may be alike in both positions, so the mean is taken as no surer than one of them. */
const shared = (a: Covariance, b: Covariance): Covariance =>
  a.map((row, i) => row.map((v, j) => (v + (b[i]?.[j] ?? 0)) / 2))

function fitOfBoth(a: Goodness, b: Goodness): Goodness {
  const degreesOfFreedom = a.degreesOfFreedom + b.degreesOfFreedom
  const chiSquare = [a, b].reduce((sum, g) => sum + (g.reducedChiSquare ?? 0) * g.degreesOfFreedom, 0)
  return {
    gaugeStep: Math.max(a.gaugeStep, b.gaugeStep),
    residuals: [...a.residuals, ...b.residuals],
    degreesOfFreedom,
    ...(degreesOfFreedom > 0 && { reducedChiSquare: chiSquare / degreesOfFreedom }),
    gaugeExplains: a.gaugeExplains && b.gaugeExplains,
    closure: a.closure.state !== 'open' && b.closure.state === 'open' ? b.closure : a.closure,
  }
}

/** Length of half the difference of two vectors, along its own direction; the widest direction where it has none. */
function half(a: InPlanes<Uncertain>, b: InPlanes<Uncertain>, C: Covariance): Uncertain {
  const v = inBothPlanes((plane) => (a[plane].value - b[plane].value) / 2)
  const value = Math.hypot(v.vertical, v.horizontal)
  const along = value > 0 ? [0, v.vertical / value, v.horizontal / value] : undefined
  const square = along ? variance(along, C) : Math.max(C[1]?.[1] ?? 0, C[2]?.[2] ?? 0)
  return { value, standard: Math.sqrt(square / 2) }
}

const mean = (
  C: Covariance,
  [one, a]: readonly [Uncertain, InPlanes<Uncertain>],
  [two, b]: readonly [Uncertain, InPlanes<Uncertain>],
): readonly [Uncertain, InPlanes<Uncertain>] => {
  const values = [middle(one, two), middle(a.vertical, b.vertical), middle(a.horizontal, b.horizontal)]
  return [pick(values, C, 0), { vertical: pick(values, C, 1), horizontal: pick(values, C, 2) }]
}

/** Face from gaps read in two positions of the flange half a turn apart, at places that stay with the hull. What the flange face runs out
 * turns with it and is seen with opposite signs, so the mean of both is free of it, whatever its size and direction; half the difference
 * is the run-out: how much the gap at one place swings as the flange turns, total indicator reading on the diameter read, m. Turn the shaft
 * flange alone for its own run-out, both together for that of both. Both faces fitted on one radius, else OutOfRange. Source: mean over
 * positions of the flange, US Army TM 55-1905-220-14, line shafting (in principle); two positions suffice [derived].
 * @example faceWithoutRunOut(fitFace([1.95, 1.8, 1.65, 1.8].map((mm, i) => ({ angle: (i * Math.PI) / 2, value: mm / 1000 })), { radius:
 * 0.05, gaugeStep: 1e-5 }).value, fitFace([1.85, 1.8, 1.75, 1.8].map((mm, i) => ({ angle: (i * Math.PI) / 2, value: mm / 1000 })), {
 * radius: 0.05, gaugeStep: 1e-5 }).value).runOut.value // ≈ 1e-4 */
export function faceWithoutRunOut(one: FaceFit, two: FaceFit): WithoutRunOut<FaceFit> {
  if (one.radius !== two.radius) throw new OutOfRange('run-out: expected both faces read on one radius')
  const covariance = shared(one.covariance, two.covariance)
  const [gap, slope] = mean(covariance, [one.gap, one.slope], [two.gap, two.slope])
  const by = half(one.slope, two.slope, covariance)
  const D = 2 * one.radius
  return {
    mean: { radius: one.radius, gap, slope, covariance, ...fitOfBoth(one, two) },
    runOut: { value: D * by.value, standard: D * by.standard },
  }
}

/** Rim from offsets read in two positions of the flange half a turn apart; as `faceWithoutRunOut`. The run-out is twice the distance
 * between the middle of the rim and its axis of turning: total indicator reading, m.
 * @example rimWithoutRunOut(fitRim([0.1, 0, -0.1, 0].map((mm, i) => ({ angle: (i * Math.PI) / 2, value: mm / 1000 })), { gaugeStep: 1e-5
 * }).value, fitRim([0.04, 0, -0.04, 0].map((mm, i) => ({ angle: (i * Math.PI) / 2, value: mm / 1000 })), { gaugeStep: 1e-5
 * }).value).runOut.value // ≈ 6e-5 */
export function rimWithoutRunOut(one: RimFit, two: RimFit): WithoutRunOut<RimFit> {
  const covariance = shared(one.covariance, two.covariance)
  const [step, offset] = mean(covariance, [one.step, one.offset], [two.step, two.offset])
  const by = half(one.offset, two.offset, covariance)
  return {
    mean: { step, offset, covariance, ...fitOfBoth(one, two) },
    runOut: { value: 2 * by.value, standard: 2 * by.standard },
  }
}
