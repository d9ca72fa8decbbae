import type { Uncertain } from '../../quantity/uncertainty.ts'
import type { Result } from '../result.ts'
import { type FeetProblem, type Foot, oneStation } from './feet.ts'
import type { InPlanes } from './planes.ts'
import { rigidMachine } from './rigid-move.ts'

/** How the machine flange stands, as read: slope (rad), and offset (m) where it was read. */
export type Stand = { readonly slope: InPlanes<Uncertain>; readonly offset?: InPlanes<Uncertain> }

/** What may have happened instead of what was meant. `feet` are names. */
export type Hypothesis =
  | { readonly type: 'turned-the-wrong-way' | 'did-not-follow'; readonly feet: readonly string[] }
  /** The machine came part of the way (share of it, 0 to 1), all feet alike: it was read before it was clamped. */
  | { readonly type: 'part-of-the-way'; readonly share: number }
  /** The circle the gauge goes in on is `factor` times what is stated. */
  | { readonly type: 'other-gauge-diameter'; readonly factor: number }
  | { readonly type: 'sides-swapped' | 'top-and-bottom-swapped' | 'wrong-side' | 'offset-not-carried' }

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

/** 99 % points of chi-square for 1 to 4 degrees of freedom. Source: NIST/SEMATECH e-Handbook, 1.3.6.7.4. */
const most = [6.635, 9.21, 11.345, 13.277] as const

/** An explanation has to lower chi-square by this much: three standard deviations of one quantity. */
const clearly = 9
/** Explanations nearer to each other than this (one standard deviation of one quantity, doubled) do as well as each other. */
const alike = 4

type Component = {
  readonly kind: 'slope' | 'offset'
  readonly plane: keyof InPlanes<unknown>
  readonly before: number
  /** What the move as noted should do. */
  readonly change: number
  readonly found: number
  readonly variance: number
}

/** Holds a reading after a move against what the move should have done, and looks for what may have gone wrong: nuts turned the wrong way, a foot
 * (or a pair at one station) that did not follow, a machine that came part of the way, a gauge circle of another size, sides or top and bottom
 * swapped in the later reading, sideways moves to the wrong side, an offset that did not go with the slope.
 *
 * `moves` are those noted, in the order of the feet, with their own uncertainty. Only offsets read both times count. Slopes rad, lengths
 * m; signs as everywhere: + up, + to starboard. The planes' errors are taken as independent of each other. Feet at one
 * station or in one oblique line come back as a problem; a bad number is a RangeError. Source: chi-square test of the residuals;
 * choice of the explanation by Akaike's criterion (two for each fitted figure). [derived]
 * @example explainMismatch({ feet: [{ name: 'aft', x: 0.2, y: 0 }, { name: 'fwd', x: 0.6, y: 0 }], moves: [0, 4e-4].map((up) => ({
 * vertical: { value: up, standard: 5e-6 }, horizontal: { value: 0, standard: 5e-6 } })), before: { slope: inBothPlanes(() => ({
 * value: -1e-3, standard: 1e-5 })) }, after: { slope: { vertical: { value: -2e-3, standard: 1e-5 }, horizontal: { value: -1e-3,
 * standard: 1e-5 } } } }).value.explanations[0].hypothesis.type // 'turned-the-wrong-way' */
export function explainMismatch(of: {
  readonly feet: readonly Foot[]
  readonly moves: readonly InPlanes<Uncertain>[]
  readonly before: Stand
  readonly after: Stand
}): Result<Mismatch, FeetProblem> {
  const { feet, moves, before, after } = of
  const machine = rigidMachine(feet)
  if (!machine.ok) return machine
  const planned = machine.value(moves)
  const components = (['vertical', 'horizontal'] as const).flatMap((plane): Component[] => {
    const component = (kind: 'slope' | 'offset'): Component[] => {
      const [was, is, change] = [before[kind]?.[plane], after[kind]?.[plane], planned[plane][kind]]
      if (!was || !is) return []
      const variance = was.standard ** 2 + is.standard ** 2 + change.standard ** 2
      return [{ kind, plane, before: was.value, change: change.value, found: is.value, variance }]
    }
    return [...component('slope'), ...component('offset')]
  })
  const off = (expected: (c: Component) => number): number =>
    components.reduce((sum, c) => sum + (c.found - expected(c)) ** 2 / c.variance, 0)
  /** The moves done otherwise, in changes of the axis. */
  const done = (change: (move: InPlanes<Uncertain>, i: number) => InPlanes<Uncertain>) => {
    const moved = machine.value(moves.map(change))
    return off(({ before: was, plane, kind }) => was + moved[plane][kind].value)
  }

  const chiSquare = off(({ before: was, change }) => was + change)
  const degreesOfFreedom = components.length
  const noise = chiSquare <= (most[degreesOfFreedom - 1] ?? Number.POSITIVE_INFINITY)
  if (noise) return { ok: true, value: { chiSquare, degreesOfFreedom, noise, explanations: [] } }

  const scaled = (u: Uncertain, by: number): Uncertain => ({ ...u, value: by * u.value })
  const up = (move: InPlanes<Uncertain>, by: number) => ({ ...move, vertical: scaled(move.vertical, by) })
  const tried: (Explanation & { readonly fitted: number })[] = []
  const suppose = (hypothesis: Hypothesis, left: number, fitted = 0) =>
    tried.push({ hypothesis, chiSquare: left, fitted })

  for (const group of groupsOf(feet, moves)) {
    const names = group.map((i) => feet[i]?.name ?? '')
    const only = (by: number) => done((move, i) => (group.includes(i) ? up(move, by) : move))
    suppose({ type: 'turned-the-wrong-way', feet: names }, only(-1))
    suppose({ type: 'did-not-follow', feet: names }, only(0))
  }
  suppose(
    { type: 'wrong-side' },
    done((move) => ({ ...move, horizontal: scaled(move.horizontal, -1) })),
  )
  const mirrored = (plane: Component['plane']) =>
    off((c) => (c.plane === plane ? -(c.before + c.change) : c.before + c.change))
  suppose({ type: 'sides-swapped' }, mirrored('horizontal'))
  suppose({ type: 'top-and-bottom-swapped' }, mirrored('vertical'))
  if (components.some((c) => c.kind === 'offset'))
    suppose(
      { type: 'offset-not-carried' },
      off((c) => c.before + (c.kind === 'offset' ? 0 : c.change)),
    )

  const share = fitted(components, () => true)
  if (share !== undefined && share > 0.15 && share < 0.85)
    suppose(
      { type: 'part-of-the-way', share },
      off((c) => c.before + share * c.change),
      1,
    )
  // Slopes as computed are the true ones times the factor; the move is true.
  const inverse = fitted(components, ({ kind }) => kind === 'slope')
  if (inverse !== undefined && inverse > 0.25 && inverse < 4)
    suppose(
      { type: 'other-gauge-diameter', factor: inverse },
      off((c) => c.before + (c.kind === 'slope' ? inverse : 1) * c.change),
      1,
    )

  const score = (one: (typeof tried)[number]) => one.chiSquare + 2 * one.fitted
  const able = tried
    .filter((one) => {
      const left = most[degreesOfFreedom - one.fitted - 1] ?? Number.NEGATIVE_INFINITY
      return one.chiSquare <= left && score(one) <= chiSquare - clearly
    })
    .sort((a, b) => score(a) - score(b))
  const [best] = able
  const explanations = able
    .filter((one) => best && score(one) - score(best) < alike)
    .map(({ hypothesis, chiSquare: left }) => ({ hypothesis, chiSquare: left }))
  return { ok: true, value: { chiSquare, degreesOfFreedom, noise, explanations } }
}

/** The share of the change that fits best, over the components that have it. */
function fitted(components: readonly Component[], has: (c: Component) => boolean): number | undefined {
  let [cross, square] = [0, 0]
  for (const c of components) {
    if (!has(c)) continue
    cross += (c.change * (c.found - c.before)) / c.variance
    square += c.change ** 2 / c.variance
  }
  // Less than three standard deviations of change tells nothing of its size.
  return square < clearly ? undefined : cross / square
}

/** Feet that may have gone wrong together: each by itself, those of a station, all; only where they were moved up or down. */
function groupsOf(
  feet: readonly Foot[],
  moves: readonly InPlanes<Uncertain>[],
): readonly (readonly number[])[] {
  const moved = feet.map((_, i) => i).filter((i) => (moves[i]?.vertical.value ?? 0) !== 0)
  const stations = moved.map((i) =>
    moved.filter((j) => Math.abs((feet[j]?.x ?? 0) - (feet[i]?.x ?? 0)) < oneStation),
  )
  const groups = [moved, ...stations, ...moved.map((i) => [i])].filter((group) => group.length > 0)
  return [...new Map(groups.map((group) => [group.join(), group])).values()]
}
