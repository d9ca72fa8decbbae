import { exactly, type Uncertain } from '../../quantity/uncertainty.ts'
import type { Result } from '../result.ts'
import type { FeetProblem, Foot } from './feet.ts'
import type { Component, Expected, Hypothesis, MoveLog, NotedMove } from './hypothesis.ts'
import { type InPlanes, inBothPlanes } from './planes.ts'
import { rigidMachine } from './rigid-move.ts'
import { isSound, supposed, suppositions } from './suppositions.ts'

/** How the machine flange stands, as read: slope (rad), and offset (m) where it was read. */
export type AxisReading = { readonly slope: InPlanes<Uncertain>; readonly offset?: InPlanes<Uncertain> }

export type Explanation = {
  readonly hypothesis: Hypothesis
  /** What is left unexplained, like `chiSquare` of the whole. */
  readonly chiSquare: number
}

/** How far a reading is from what a move should have done. */
export type Mismatch = {
  /** Sum over what was read of (found - expected)² / u². */
  readonly chiSquare: number
  readonly degreesOfFreedom: number
  /** Measurement noise explains it. */
  readonly noise: boolean
  /** What explains it clearly better than noise, best first; none when noise does, and more than one when they do as well as each other. */
  readonly explanations: readonly Explanation[]
}

/** Two readings, and the moves noted between them in the order of the feet. */
export type Readings = {
  readonly feet: readonly Foot[]
  readonly moves: readonly NotedMove[]
  readonly before: AxisReading
  readonly after: AxisReading
  /** The slopes depend on a gauge circle; from two rims they do not. Where it is not said, they do. */
  readonly onCircle?: boolean
  /** The largest circle that the gauge can go in on, over the one that is stated. */
  readonly largestCircle?: number
}

/** 99 % points of chi-square for 1 to 4 degrees of freedom. Source: NIST/SEMATECH e-Handbook, 1.3.6.7.4. */
const chiSquare99 = [6.635, 9.21, 11.345, 13.277] as const

/** An explanation has to lower chi-square by this much: four standard deviations of one quantity. By simulation, a mistake is then named in fewer than one in a thousand logs without one. */
const chiSquareGain = 16
/** Explanations nearer to each other than this (one standard deviation of one quantity, doubled) do as well as each other. */
const equalChiSquare = 4

/** Holds a reading after a move against what the move should have done, and looks for what may have gone wrong (`suppositions.ts`).
 *
 * `moves` are those noted, in the order of the feet, with their own uncertainty. Only offsets read both times count. `onCircle`: the slopes
 * depend on a gauge circle; from two rims they do not. `largestCircle`: a circle that is larger, over the one stated, is none. Slopes rad, lengths m; signs as everywhere: + up, + to starboard. The planes' errors
 * are taken as independent of each other. Feet at one station or in one oblique line come back as a problem; a bad number throws OutOfRange.
 * Source: chi-square test of the residuals; choice of the explanation by Akaike's criterion (two for each fitted figure). [derived]
 * @example explainMismatch({ feet: [{ name: 'aft', x: 0.2, y: 0 }, { name: 'fwd', x: 0.6, y: 0 }], moves: [0, 4e-4].map((up) => ({
 * vertical: { value: up, standard: 5e-6 }, horizontal: { value: 0, standard: 5e-6 } })), before: { slope: inBothPlanes(() => ({
 * value: -1e-3, standard: 1e-5 })) }, after: { slope: { vertical: { value: -2e-3, standard: 1e-5 }, horizontal: { value: -1e-3,
 * standard: 1e-5 } } } }).value.explanations[0].hypothesis.type // 'turned-the-wrong-way' */
export function explainMismatch(of: Readings): Result<Mismatch, FeetProblem> {
  const log = logOf(of)
  if (!log.ok) return log
  const { components, planned } = log.value
  const chiSquare = planned.reduce((sum, { off, variance }) => sum + off ** 2 / variance, 0)
  const degreesOfFreedom = components.length
  const noise = isNoise(chiSquare, degreesOfFreedom)
  if (noise) return { ok: true, value: { chiSquare, degreesOfFreedom, noise, explanations: [] } }
  const tried = suppositions(log.value).map((one): TriedExplanation => {
    const expected = components.map(one.expects)
    const left = leftBy(expected, components)
    return {
      hypothesis: one.hypothesis,
      chiSquare: left,
      score: left + 2 * one.fitted,
      fits: isNoise(left, degreesOfFreedom - one.fitted),
      shows: expected.map(({ value }) => value),
    }
  })
  const fitting = tried.filter(({ fits }) => fits).sort((a, b) => a.score - b.score)
  const [best] = fitting
  const named = fitting.filter(({ hypothesis, score }) => {
    if (!best || best.score > chiSquare - chiSquareGain) return false
    return score - best.score < equalChiSquare || !isSound(hypothesis)
  })
  // What shows the same as one that is named cannot be told from it, though its own uncertainty may be a little less.
  const same = tried.filter((one) => !named.includes(one) && named.some((other) => showsSame(one, other)))
  const explanations = [...named, ...same].map(({ hypothesis, chiSquare: left }) => ({
    hypothesis,
    chiSquare: left,
  }))
  return { ok: true, value: { chiSquare, degreesOfFreedom, noise, explanations } }
}

/** An explanation that was tried: whether it leaves no more than noise, and what the later reading would show. */
interface TriedExplanation extends Explanation {
  readonly score: number
  readonly fits: boolean
  readonly shows: readonly number[]
}

/** Figures (m, rad) nearer to each other than this are the same. */
const sameFigure = 1e-9

const showsSame = (one: TriedExplanation, other: TriedExplanation): boolean =>
  one.shows.every((value, i) => Math.abs(value - (other.shows[i] ?? Number.NaN)) < sameFigure)

interface Log extends MoveLog {
  /** What is found less what the moves should have brought, with its variance. */
  readonly planned: readonly { readonly off: number; readonly variance: number }[]
}

function logOf(of: Readings): Result<Log, FeetProblem> {
  const { feet, moves, before, after, onCircle = true, largestCircle } = of
  const machine = rigidMachine(feet)
  if (!machine.ok) return machine
  const planned = machine.value(moves)
  const byOneFoot = feet.map((_, i) =>
    machine.value(feet.map((__, k) => inBothPlanes(() => exactly(i === k ? 1 : 0)))),
  )
  const read = (['vertical', 'horizontal'] as const).flatMap((plane) =>
    (['slope', 'offset'] as const).flatMap((kind) => {
      const [was, is, change] = [before[kind]?.[plane], after[kind]?.[plane], planned[plane][kind]]
      if (!was || !is) return []
      const variance = was.standard ** 2 + is.standard ** 2
      const effects = byOneFoot.map((by) => by[plane][kind].value)
      const component: Component = { kind, plane, before: was.value, found: is.value, variance, effects }
      const off = is.value - was.value - change.value
      return [{ component, planned: { off, variance: variance + change.standard ** 2 } }]
    }),
  )
  return {
    ok: true,
    value: {
      feet,
      moves,
      components: read.map(({ component }) => component),
      onCircle,
      ...(largestCircle !== undefined && { largestCircle }),
      planned: read.map((one) => one.planned),
    },
  }
}

/** Where everything that was read is fitted nothing may be left. */
const isNoise = (chiSquare: number, degreesOfFreedom: number): boolean =>
  chiSquare <=
  (degreesOfFreedom === 0 ? 1e-9 : (chiSquare99[degreesOfFreedom - 1] ?? Number.NEGATIVE_INFINITY))

const leftBy = (expected: readonly Expected[], components: readonly Component[]): number =>
  expected.reduce(
    (sum, { value, variance }, i) => sum + ((components[i]?.found ?? Number.NaN) - value) ** 2 / variance,
    0,
  )

/** Whether two readings, which `mismatch` explains, speak clearly against something that is supposed to have happened: it leaves more than noise, and
 * `chiSquareGain` more than what explains them. False where they cannot tell: nothing was moved that would show it. m, rad. [derived]
 * @example speaksAgainst({ type: 'made-twice' }, { feet: [], moves: [], before: { slope: inBothPlanes(() => exactly(0)) }, after: { slope:
 * inBothPlanes(() => exactly(0)) } }, { chiSquare: 0, degreesOfFreedom: 2, noise: true, explanations: [] }) // false */
export function speaksAgainst(supposedly: Hypothesis, of: Readings, mismatch: Mismatch): boolean {
  const log = logOf(of)
  const one = log.ok ? supposed(supposedly, log.value) : undefined
  if (!log.ok || !one) return false
  const left = leftBy(log.value.components.map(one.expects), log.value.components)
  const explained = mismatch.explanations[0]?.chiSquare ?? mismatch.chiSquare
  return !isNoise(left, mismatch.degreesOfFreedom) && left > explained + chiSquareGain
}

/** Whether the next moves can be worked out from the later reading: nothing is wrong with it, or every explanation that fits leaves it and the bed as the job has them.
 * @example allowsSteps({ chiSquare: 40, degreesOfFreedom: 4, noise: false, explanations: [] }) // false */
export const allowsSteps = ({ noise, explanations }: Mismatch): boolean =>
  noise || (explanations.length > 0 && explanations.every(({ hypothesis }) => isSound(hypothesis)))
