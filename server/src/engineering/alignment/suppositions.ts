import { exactly, plus, type Uncertain } from '../../quantity/uncertainty.ts'
import { byStation, oneStation } from './feet.ts'
import type { Component, Hypothesis, MoveLog, NotedMove, Supposition } from './hypothesis.ts'
import { type Mirror, type Swapped, writtenSo } from './mirrors.ts'
import { type InPlanes, inBothPlanes } from './planes.ts'

interface HypothesisKind {
  /** Whether the next moves can be worked out from this reading, or what is in doubt: the reading does not show the machine as it stands, or bed or coupling are not what the job says. */
  readonly basis: 'sound' | 'reading-in-doubt' | 'job-in-doubt'
  readonly suppose: (log: MoveLog) => readonly Supposition[]
}

type Move = InPlanes<Uncertain>

const times = ({ value, standard }: Uncertain, by: number): Uncertain => ({
  value: by * value,
  standard: Math.abs(by) * standard,
})
const up = (move: Move, by: number): Move => ({ ...move, vertical: times(move.vertical, by) })
const sideways = (move: Move, by: number): Move => ({ ...move, horizontal: times(move.horizontal, by) })
const both = (move: Move, by: number): Move => sideways(up(move, by), by)

const changeBy = ({ effects, plane }: Component, moves: readonly Move[]): number =>
  effects.reduce((sum, effect, i) => sum + effect * (moves[i]?.[plane].value ?? 0), 0)

/** Of what is found less what is expected where these moves were made. */
const varianceOf = ({ variance, effects, plane }: Component, moves: readonly Move[]): number =>
  effects.reduce((sum, effect, i) => sum + (effect * (moves[i]?.[plane].standard ?? 0)) ** 2, variance)

/** The later reading where the moves were made otherwise. */
function ifMade(
  hypothesis: Hypothesis,
  { moves }: MoveLog,
  otherwise: (move: NotedMove, i: number) => Move,
): Supposition {
  const made = moves.map(otherwise)
  return {
    hypothesis,
    expects: (c) => ({ value: c.before + changeBy(c, made), variance: varianceOf(c, made) }),
    fitted: 0,
  }
}

/** The later reading where the moves were made as noted, and what was read does not show it. */
const ifMadeButReads = (
  hypothesis: Hypothesis,
  { moves }: MoveLog,
  reads: (c: Component, change: number) => number,
): Supposition => ({
  hypothesis,
  expects: (c) => ({ value: reads(c, changeBy(c, moves)), variance: varianceOf(c, moves) }),
  fitted: 0,
})

const hasHeights = ({ moves }: MoveLog): boolean => moves.some(({ vertical }) => vertical.value !== 0)
const hasSideways = ({ moves }: MoveLog): boolean => moves.some(({ horizontal }) => horizontal.value !== 0)
const hasNuts = ({ moves }: MoveLog): boolean => moves.some(({ byNut = 0 }) => byNut !== 0)
const only = (applies: boolean, of: () => readonly Supposition[]): readonly Supposition[] =>
  applies ? of() : []

/** Feet that may have gone wrong together: each by itself, those of a station, all; only where they were moved up or down. */
function groupsOf({ feet, moves }: MoveLog): readonly (readonly number[])[] {
  const moved = feet.map((_, i) => i).filter((i) => (moves[i]?.vertical.value ?? 0) !== 0)
  const stations = byStation(feet).map((station) => station.feet.filter((i) => moved.includes(i)))
  const groups = [moved, ...stations, ...moved.map((i) => [i])].filter((group) => group.length > 0)
  return [...new Map(groups.map((group) => [group.join(), group])).values()]
}

/** The heights of some feet times `by`. */
const heightsOf =
  (
    type: 'turned-the-wrong-way' | 'did-not-follow' | 'forgotten',
    by: number,
    which: (group: readonly number[], log: MoveLog) => boolean,
  ) =>
  (log: MoveLog): readonly Supposition[] =>
    groupsOf(log)
      .filter((group) => which(group, log))
      .map((group) => {
        const feet = group.map((i) => log.feet[i]?.name ?? '')
        return ifMade({ type, feet }, log, (move, i) => (group.includes(i) ? up(move, by) : move))
      })

/** Whether these heights are all that was moved: then nothing moved at all. */
const isAll = (group: readonly number[], log: MoveLog): boolean =>
  !hasSideways(log) && log.moves.every(({ vertical }, i) => vertical.value === 0 || group.includes(i))

/** Less than three standard deviations of change tells nothing of its size. */
const visibleChiSquare = 9

const swappedIn = ['later', 'first', 'both'] as const

/** What the moves changed of each component, and the variance of that; by kind and plane. */
type Changes = { readonly [K in Component['kind']]?: InPlanes<Changed> }
interface Changed {
  readonly before: number
  readonly change: number
  readonly variance: number
}

function changesOf({ components, moves }: MoveLog): Changes {
  const of = (kind: Component['kind']) => {
    const own = components.filter((c) => c.kind === kind)
    if (own.length < 2) return undefined
    return inBothPlanes((plane): Changed => {
      const c = own.find((one) => one.plane === plane) as Component
      return { before: c.before, change: changeBy(c, moves), variance: varianceOf(c, moves) - c.variance }
    })
  }
  const [slope, offset] = [of('slope'), of('offset')]
  return { ...(slope && { slope }), ...(offset && { offset }) }
}

const none: Changed = { before: 0, change: 0, variance: 0 }

const mirroredIn = (swapped: Swapped, mirror: Mirror, changes: Changes): Supposition => ({
  hypothesis: { ...mirror, swapped },
  expects: (c) => {
    const at = (plane: Component['plane']) => changes[c.kind]?.[plane] ?? none
    // A move that is seen in the other plane misses by as much there.
    const across = mirror.type === 'quarter-turn' && swapped !== 'first'
    const seen = across === (c.plane === 'horizontal') ? 'vertical' : 'horizontal'
    return { value: writtenSo(mirror, swapped, c, at), variance: c.variance + at(seen).variance }
  },
  fitted: 0,
})

const inOnePlane = [{ type: 'top-and-bottom-swapped' }, { type: 'sides-swapped' }] as const

/** Less than half a standard deviation apart, two show the same. */
const distinctChiSquare = 0.25

/** Whether a reading could tell both from each other at all. */
const areDistinguishable = (one: Supposition, other: Supposition, { components }: MoveLog): boolean =>
  components.reduce((sum, c) => {
    const [a, b] = [one.expects(c), other.expects(c)]
    return sum + (a.value - b.value) ** 2 / a.variance
  }, 0) >= distinctChiSquare

/** In each reading. Of those of both planes only what does not look like one of one plane: that is simpler. */
const mirrored =
  (...mirrors: readonly Mirror[]) =>
  (log: MoveLog): readonly Supposition[] => {
    const changes = changesOf(log)
    return mirrors.flatMap((mirror) =>
      swappedIn.flatMap((swapped) => {
        const one = mirroredIn(swapped, mirror, changes)
        const simpler = inOnePlane.filter(({ type }) => type !== mirror.type)
        const isSimple = simpler.length < inOnePlane.length
        const isDistinct =
          isSimple ||
          simpler.every((other) => areDistinguishable(one, mirroredIn(swapped, other, changes), log))
        return isDistinct ? [one] : []
      }),
    )
  }

/** A part of the change that is `factor` times what it should be. */
interface Scaled {
  readonly part: (c: Component) => number
  readonly range: readonly [number, number]
  readonly hypothesis: (factor: number) => Hypothesis
}

const scaledBy = ({ moves }: MoveLog, { part, hypothesis }: Scaled, factor: number): Supposition => ({
  hypothesis: hypothesis(factor),
  expects: (c) => ({
    value: c.before + changeBy(c, moves) + (factor - 1) * part(c),
    variance: varianceOf(c, moves),
  }),
  fitted: 1,
})

/** One factor fitted to a part of the change, by weighted least squares; none where it is outside its range or where the part is too small to tell.
 * `most`: what it cannot exceed, and is then taken to be. */
function scaled(log: MoveLog, of: Scaled, most = Number.POSITIVE_INFINITY): readonly Supposition[] {
  const { components, moves } = log
  let [cross, square] = [0, 0]
  for (const c of components) {
    const [by, variance] = [of.part(c), varianceOf(c, moves)]
    cross += (by * (c.found - (c.before + changeBy(c, moves) - by))) / variance
    square += by ** 2 / variance
  }
  const factor = Math.min(cross / square, most)
  const [least, largest] = of.range
  return square < visibleChiSquare || factor < least || factor > largest ? [] : [scaledBy(log, of, factor)]
}

const byShare = (log: MoveLog): Scaled => ({
  part: (c) => changeBy(c, log.moves),
  range: [0.15, 0.85],
  hypothesis: (share) => ({ type: 'part-of-the-way', share }),
})

function byPitch({ moves }: MoveLog): Scaled {
  const nuts = moves.map(({ byNut = 0 }) => ({ vertical: exactly(byNut), horizontal: exactly(0) }))
  return {
    part: (c) => changeBy(c, nuts),
    range: [0.3, 3],
    hypothesis: (factor) => ({ type: 'other-pitch', factor }),
  }
}

const byCircle = (log: MoveLog): Scaled => ({
  part: (c) => (c.kind === 'slope' ? changeBy(c, log.moves) : 0),
  range: [0.25, 4],
  hypothesis: (factor) => ({ type: 'other-gauge-diameter', factor }),
})

/** The move of the foot that stands across from this one at the other end: port stays port. The mean where two are as near. */
function acrossEnds({ feet, moves }: MoveLog): readonly Move[] {
  const stations = byStation(feet)
  const [aft, fwd] = [stations[0]?.feet ?? [], stations.at(-1)?.feet ?? []]
  return moves.map((own, i) => {
    const there = aft.includes(i) ? fwd : fwd.includes(i) ? aft : undefined
    if (!there) return own
    const away = (k: number) => Math.abs((feet[k]?.y ?? 0) - (feet[i]?.y ?? 0))
    const nearest = Math.min(...there.map(away))
    const meant = there.flatMap((k) => (away(k) - nearest < oneStation ? (moves[k] ?? []) : []))
    return inBothPlanes((plane) => meant.map((move) => times(move[plane], 1 / meant.length)).reduce(plus))
  })
}

function atTheWrongEnd(log: MoveLog): readonly Supposition[] {
  const exchanged = acrossEnds(log)
  const differs = (plane: Component['plane']) =>
    exchanged.some((move, i) => Math.abs(move[plane].value - (log.moves[i]?.[plane].value ?? 0)) > 1e-9)
  const type = 'made-at-the-wrong-end'
  return [
    ...only(differs('vertical') || differs('horizontal'), () => [
      ifMade({ type, made: 'all' }, log, (move, i) => exchanged[i] ?? move),
    ]),
    ...only(differs('vertical') && differs('horizontal'), () => [
      ifMade({ type, made: 'heights' }, log, (move, i) => ({
        ...move,
        vertical: (exchanged[i] ?? move).vertical,
      })),
    ]),
  ]
}

/** Every explanation that is tried, each once. All of them have the form M2 (M1 before + C change): M mirrors or turns the first or the later reading, C is what the moves did instead. */
const hypothesisKinds: { readonly [T in Hypothesis['type']]: HypothesisKind } = {
  'turned-the-wrong-way': { basis: 'sound', suppose: heightsOf('turned-the-wrong-way', -1, () => true) },
  'did-not-follow': {
    basis: 'job-in-doubt',
    suppose: heightsOf('did-not-follow', 0, (group) => group.length === 1),
  },
  forgotten: {
    basis: 'sound',
    suppose: heightsOf('forgotten', 0, (group, log) => group.length > 1 && !isAll(group, log)),
  },
  'nothing-moved': {
    basis: 'reading-in-doubt',
    suppose: (log) =>
      only(hasHeights(log) || hasSideways(log), () => [
        ifMade({ type: 'nothing-moved' }, log, (move) => both(move, 0)),
      ]),
  },
  'sideways-not-done': {
    basis: 'sound',
    suppose: (log) =>
      only(hasHeights(log) && hasSideways(log), () => [
        ifMade({ type: 'sideways-not-done' }, log, (move) => sideways(move, 0)),
      ]),
  },
  'wrong-side': {
    basis: 'sound',
    suppose: (log) =>
      only(hasSideways(log), () => [ifMade({ type: 'wrong-side' }, log, (move) => sideways(move, -1))]),
  },
  'part-of-the-way': {
    basis: 'reading-in-doubt',
    suppose: (log) => scaled(log, byShare(log)),
  },
  'made-twice': {
    basis: 'sound',
    suppose: (log) =>
      only(hasHeights(log) || hasSideways(log), () => [
        ifMade({ type: 'made-twice' }, log, (move) => both(move, 2)),
      ]),
  },
  // The machine may stand anywhere then, so that each thing read is fitted.
  'move-not-noted': {
    basis: 'sound',
    suppose: (log) =>
      only(!hasHeights(log) && !hasSideways(log), () => [
        {
          hypothesis: { type: 'move-not-noted' },
          expects: ({ found, variance }) => ({ value: found, variance }),
          fitted: log.components.length,
        },
      ]),
  },
  'made-at-the-wrong-end': { basis: 'sound', suppose: atTheWrongEnd },
  'other-pitch': {
    basis: 'job-in-doubt',
    suppose: (log) => only(hasNuts(log), () => scaled(log, byPitch(log))),
  },
  'other-hand': {
    basis: 'job-in-doubt',
    suppose: (log) =>
      only(hasNuts(log), () => [
        ifMade({ type: 'other-hand' }, log, (move) => ({
          ...move,
          vertical: { ...move.vertical, value: move.vertical.value - 2 * (move.byNut ?? 0) },
        })),
      ]),
  },
  'top-and-bottom-swapped': {
    basis: 'reading-in-doubt',
    suppose: mirrored({ type: 'top-and-bottom-swapped' }),
  },
  'sides-swapped': { basis: 'reading-in-doubt', suppose: mirrored({ type: 'sides-swapped' }) },
  'half-turn': { basis: 'reading-in-doubt', suppose: mirrored({ type: 'half-turn' }) },
  'quarter-turn': {
    basis: 'reading-in-doubt',
    suppose: mirrored(
      { type: 'quarter-turn', way: 'clockwise' },
      { type: 'quarter-turn', way: 'counter-clockwise' },
    ),
  },
  'offset-signs-reversed': {
    basis: 'reading-in-doubt',
    suppose: mirrored({ type: 'offset-signs-reversed' }),
  },
  // From two rims the slope has no gaps.
  'gap-signs-reversed': {
    basis: 'reading-in-doubt',
    suppose: (log) => only(log.onCircle, () => mirrored({ type: 'gap-signs-reversed' })(log)),
  },
  // Only all figures as they are written can tell, and only lifts.
  copied: { basis: 'reading-in-doubt', suppose: () => [] },
  'not-as-noted': { basis: 'reading-in-doubt', suppose: () => [] },
  // Slopes as computed are the true ones times the factor; the move is true.
  'other-gauge-diameter': {
    basis: 'job-in-doubt',
    suppose: (log) => only(log.onCircle, () => scaled(log, byCircle(log), log.largestCircle)),
  },
  'offset-not-carried': {
    basis: 'reading-in-doubt',
    suppose: (log) =>
      only(
        log.components.some(({ kind }) => kind === 'offset'),
        () => [
          ifMadeButReads({ type: 'offset-not-carried' }, log, (c, change) =>
            c.kind === 'offset' ? c.before : c.before + change,
          ),
        ],
      ),
  },
}

/** All explanations that can be tried on these readings and moves, each with what the later reading would then show. m, rad. [derived]
 * @example suppositions({ feet: [], moves: [], components: [], onCircle: true }).length // 7 */
export const suppositions = (log: MoveLog): readonly Supposition[] =>
  Object.values(hypothesisKinds).flatMap(({ suppose }) => suppose(log))

/** Whether the next moves can be worked out from the reading where this is what happened.
 * @example isSound({ type: 'made-twice' }) // true */
export const isSound = ({ type }: Hypothesis): boolean => hypothesisKinds[type].basis === 'sound'

/** Whether another reading that is not compared leaves it open: the job says a thread or a circle wrongly, a foot hangs, or places are swapped, which
 * who did it once may do again.
 * @example isLasting({ type: 'nothing-moved' }) // false */
export const isLasting = (of: Hypothesis): boolean =>
  'swapped' in of || hypothesisKinds[of.type].basis === 'job-in-doubt'

/** What names a hypothesis, whatever figure was fitted.
 * @example hypothesisKey({ type: 'other-pitch', factor: 0.75 }) === hypothesisKey({ type: 'other-pitch', factor: 0.8 }) // true */
export const hypothesisKey = (of: Hypothesis): string => JSON.stringify({ ...of, factor: 0, share: 0 })

/** One explanation, with the figure that was fitted elsewhere, tried on these readings and moves; undefined where they cannot have it. m, rad. [derived]
 * @example supposed({ type: 'made-twice' }, { feet: [], moves: [], components: [], onCircle: true }) // undefined */
export function supposed(of: Hypothesis, log: MoveLog): Supposition | undefined {
  if (of.type === 'other-pitch') return hasNuts(log) ? scaledBy(log, byPitch(log), of.factor) : undefined
  if (of.type === 'other-gauge-diameter')
    return log.onCircle ? scaledBy(log, byCircle(log), of.factor) : undefined
  const key = hypothesisKey(of)
  return hypothesisKinds[of.type].suppose(log).find(({ hypothesis }) => hypothesisKey(hypothesis) === key)
}
