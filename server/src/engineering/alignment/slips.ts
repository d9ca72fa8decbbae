import type { Uncertain } from '../../quantity/uncertainty.ts'
import { atOneStation, type Foot, oneStation } from './feet.ts'
import type { AxisError, InPlanes } from './planes.ts'

/** What may have happened instead of what was noted. `feet` are names. */
export type Hypothesis =
  /** `did-not-follow`: one foot that hangs. `forgotten`: the feet of a station, or all heights. */
  | {
      readonly type: 'turned-the-wrong-way' | 'did-not-follow' | 'forgotten'
      readonly feet: readonly string[]
    }
  /** The machine came part of the way (share of it, 0 to 1), all feet alike: it was read before it was clamped. */
  | { readonly type: 'part-of-the-way'; readonly share: number }
  /** The circle the gauge goes in on, or the pitch of the thread, is `factor` times what is stated. */
  | { readonly type: 'other-gauge-diameter' | 'other-pitch'; readonly factor: number }
  /** Which readings have it: the one after the move, the one before it, or both. */
  | {
      readonly type: 'sides-swapped' | 'top-and-bottom-swapped'
      readonly swapped: 'later' | 'first' | 'both'
    }
  /** The moves of the aft end were made at the forward end and the other way round: all, or the heights only. */
  | { readonly type: 'made-at-the-wrong-end'; readonly made: 'all' | 'heights' }
  | {
      readonly type:
        | 'nothing-moved'
        | 'sideways-not-done'
        | 'wrong-side'
        | 'made-twice'
        | 'other-hand'
        | 'offset-not-carried'
    }

/** What a foot was noted to be moved by, m. */
export type NotedMove = InPlanes<Uncertain> & {
  /** The part of the vertical move that was noted in turns of a nut, m. */
  readonly byNut?: number
}

/** One thing that was read both times, m or rad. */
export interface Component {
  readonly kind: keyof AxisError
  readonly plane: keyof InPlanes<unknown>
  readonly before: number
  readonly found: number
  /** Of the difference between found and expected. */
  readonly variance: number
  /** What a metre of each foot changes, in the order of the feet. */
  readonly effects: readonly number[]
}

/** Two readings and the moves noted between them. */
export interface MoveLog {
  readonly feet: readonly Foot[]
  readonly moves: readonly NotedMove[]
  readonly components: readonly Component[]
  /** Slopes were worked out with a gauge circle. */
  readonly onCircle: boolean
}

/** One explanation, with what the later reading then has to show. */
export interface Supposition {
  readonly hypothesis: Hypothesis
  readonly expects: (component: Component) => number
  /** How many figures were fitted. */
  readonly fitted: 0 | 1
}

interface Slip {
  /** Whether the next moves can be worked out from this reading, or what is in doubt: the reading does not show the machine as it stands, or the bed is not what the job says. */
  readonly basis: 'sound' | 'reading-in-doubt' | 'bed-in-doubt'
  readonly suppose: (log: MoveLog) => readonly Supposition[]
}

type Done = InPlanes<number>

const done = ({ vertical, horizontal }: NotedMove): Done => ({
  vertical: vertical.value,
  horizontal: horizontal.value,
})

const changeBy = ({ effects, plane }: Component, moves: readonly Done[]): number =>
  effects.reduce((sum, effect, i) => sum + effect * (moves[i]?.[plane] ?? 0), 0)

/** The later reading where the moves were made otherwise. */
function ifDone(hypothesis: Hypothesis, { moves }: MoveLog, otherwise: (move: Done, i: number) => Done): Supposition {
  const made = moves.map((move, i) => otherwise(done(move), i))
  return { hypothesis, expects: (c) => c.before + changeBy(c, made), fitted: 0 }
}

const up = (move: Done, by: number): Done => ({ ...move, vertical: by * move.vertical })
const both = (move: Done, by: number): Done => ({ vertical: by * move.vertical, horizontal: by * move.horizontal })

const hasHeights = ({ moves }: MoveLog): boolean => moves.some(({ vertical }) => vertical.value !== 0)
const hasSideways = ({ moves }: MoveLog): boolean => moves.some(({ horizontal }) => horizontal.value !== 0)
const hasNuts = ({ moves }: MoveLog): boolean => moves.some(({ byNut = 0 }) => byNut !== 0)
const only = (applies: boolean, of: () => readonly Supposition[]): readonly Supposition[] => (applies ? of() : [])

/** Feet that may have gone wrong together: each by itself, those of a station, all; only where they were moved up or down. */
function groupsOf({ feet, moves }: MoveLog): readonly (readonly number[])[] {
  const moved = feet.map((_, i) => i).filter((i) => (moves[i]?.vertical.value ?? 0) !== 0)
  const stations = moved.map((i) =>
    moved.filter((j) => Math.abs((feet[j]?.x ?? 0) - (feet[i]?.x ?? 0)) < oneStation),
  )
  const groups = [moved, ...stations, ...moved.map((i) => [i])].filter((group) => group.length > 0)
  return [...new Map(groups.map((group) => [group.join(), group])).values()]
}

/** The heights of some feet times `by`. */
const heightsOf =
  (type: 'turned-the-wrong-way' | 'did-not-follow' | 'forgotten', by: number, which: (group: readonly number[], log: MoveLog) => boolean) =>
  (log: MoveLog): readonly Supposition[] =>
    groupsOf(log)
      .filter((group) => which(group, log))
      .map((group) => {
        const feet = group.map((i) => log.feet[i]?.name ?? '')
        return ifDone({ type, feet }, log, (move, i) => (group.includes(i) ? up(move, by) : move))
      })

/** Whether these heights are all that was moved: then nothing moved at all. */
const isAll = (group: readonly number[], log: MoveLog): boolean =>
  !hasSideways(log) && log.moves.every(({ vertical }, i) => vertical.value === 0 || group.includes(i))

const mirrored =
  (type: 'sides-swapped' | 'top-and-bottom-swapped', plane: Component['plane']) =>
  (log: MoveLog): readonly Supposition[] => {
    const noted = log.moves.map(done)
    const signs = { later: [-1, -1], first: [-1, 1], both: [1, -1] } as const
    return (['later', 'first', 'both'] as const).map((swapped) => {
      const [before, change] = signs[swapped]
      return {
        hypothesis: { type, swapped },
        expects: (c) =>
          c.plane === plane ? before * c.before + change * changeBy(c, noted) : c.before + changeBy(c, noted),
        fitted: 0,
      }
    })
  }

/** Less than three standard deviations of change tells nothing of its size. */
const visible = 9

/** One factor fitted to a part of the change, by weighted least squares; none where it is outside its range or where the part is too small to tell. */
function scaled(
  { components, moves }: MoveLog,
  {
    part,
    range: [least, most],
    hypothesis,
  }: {
    readonly part: (c: Component) => number
    readonly range: readonly [number, number]
    readonly hypothesis: (factor: number) => Hypothesis
  },
): readonly Supposition[] {
  const noted = moves.map(done)
  const rest = (c: Component) => c.before + changeBy(c, noted) - part(c)
  let [cross, square] = [0, 0]
  for (const c of components) {
    const by = part(c)
    cross += (by * (c.found - rest(c))) / c.variance
    square += by ** 2 / c.variance
  }
  const factor = cross / square
  if (square < visible || factor < least || factor > most) return []
  return [{ hypothesis: hypothesis(factor), expects: (c) => rest(c) + factor * part(c), fitted: 1 }]
}

/** The move of the foot that stands across from this one at the other end: port stays port. The mean where two are as near. */
function acrossEnds({ feet, moves }: MoveLog): readonly Done[] {
  const [aft, fwd] = [Math.min(...feet.map(({ x }) => x)), Math.max(...feet.map(({ x }) => x))]
  return feet.map((foot, i) => {
    const own = done(moves[i] as NotedMove)
    const end = atOneStation([foot.x, aft]) ? fwd : atOneStation([foot.x, fwd]) ? aft : undefined
    if (end === undefined) return own
    const there = feet.flatMap(({ x, y }, k) => (atOneStation([x, end]) ? [{ k, away: Math.abs(y - foot.y) }] : []))
    const nearest = Math.min(...there.map(({ away }) => away))
    const meant = there.filter(({ away }) => away - nearest < oneStation).map(({ k }) => done(moves[k] as NotedMove))
    const mean = (plane: keyof Done) => meant.reduce((sum, move) => sum + move[plane], 0) / meant.length
    return { vertical: mean('vertical'), horizontal: mean('horizontal') }
  })
}

function atTheWrongEnd(log: MoveLog): readonly Supposition[] {
  const exchanged = acrossEnds(log)
  const differs = (plane: keyof Done) =>
    exchanged.some((move, i) => Math.abs(move[plane] - (log.moves[i]?.[plane].value ?? 0)) > 1e-9)
  const type = 'made-at-the-wrong-end'
  return [
    ...only(differs('vertical') || differs('horizontal'), () => [
      ifDone({ type, made: 'all' }, log, (_, i) => exchanged[i] as Done),
    ]),
    ...only(differs('vertical') && differs('horizontal'), () => [
      ifDone({ type, made: 'heights' }, log, (move, i) => ({ ...move, vertical: (exchanged[i] as Done).vertical })),
    ]),
  ]
}

/** Every explanation that is tried, each once. All of them have the form M2 (M1 before + C change): M mirrors a plane of the first or of the later reading, C is what the moves did instead. */
const slips: { readonly [T in Hypothesis['type']]: Slip } = {
  'turned-the-wrong-way': { basis: 'sound', suppose: heightsOf('turned-the-wrong-way', -1, () => true) },
  'did-not-follow': {
    basis: 'bed-in-doubt',
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
        ifDone({ type: 'nothing-moved' }, log, (move) => both(move, 0)),
      ]),
  },
  'sideways-not-done': {
    basis: 'sound',
    suppose: (log) =>
      only(hasHeights(log) && hasSideways(log), () => [
        ifDone({ type: 'sideways-not-done' }, log, (move) => ({ ...move, horizontal: 0 })),
      ]),
  },
  'wrong-side': {
    basis: 'sound',
    suppose: (log) =>
      only(hasSideways(log), () => [
        ifDone({ type: 'wrong-side' }, log, (move) => ({ ...move, horizontal: -move.horizontal })),
      ]),
  },
  'part-of-the-way': {
    basis: 'reading-in-doubt',
    suppose: (log) => {
      const noted = log.moves.map(done)
      return scaled(log, {
        part: (c) => changeBy(c, noted),
        range: [0.15, 0.85],
        hypothesis: (share) => ({ type: 'part-of-the-way', share }),
      })
    },
  },
  'made-twice': {
    basis: 'sound',
    suppose: (log) =>
      only(hasHeights(log) || hasSideways(log), () => [
        ifDone({ type: 'made-twice' }, log, (move) => both(move, 2)),
      ]),
  },
  'made-at-the-wrong-end': { basis: 'sound', suppose: atTheWrongEnd },
  'other-pitch': {
    basis: 'bed-in-doubt',
    suppose: (log) => {
      const nuts = log.moves.map(({ byNut = 0 }) => ({ vertical: byNut, horizontal: 0 }))
      return only(hasNuts(log), () =>
        scaled(log, {
          part: (c) => changeBy(c, nuts),
          range: [0.3, 3],
          hypothesis: (factor) => ({ type: 'other-pitch', factor }),
        }),
      )
    },
  },
  'other-hand': {
    basis: 'bed-in-doubt',
    suppose: (log) =>
      only(hasNuts(log), () => [
        ifDone({ type: 'other-hand' }, log, (move, i) => ({
          ...move,
          vertical: move.vertical - 2 * (log.moves[i]?.byNut ?? 0),
        })),
      ]),
  },
  'top-and-bottom-swapped': {
    basis: 'reading-in-doubt',
    suppose: mirrored('top-and-bottom-swapped', 'vertical'),
  },
  'sides-swapped': { basis: 'reading-in-doubt', suppose: mirrored('sides-swapped', 'horizontal') },
  // Slopes as computed are the true ones times the factor; the move is true.
  'other-gauge-diameter': {
    basis: 'reading-in-doubt',
    suppose: (log) => {
      const noted = log.moves.map(done)
      return only(log.onCircle, () =>
        scaled(log, {
          part: (c) => (c.kind === 'slope' ? changeBy(c, noted) : 0),
          range: [0.25, 4],
          hypothesis: (factor) => ({ type: 'other-gauge-diameter', factor }),
        }),
      )
    },
  },
  'offset-not-carried': {
    basis: 'reading-in-doubt',
    suppose: (log) => {
      const noted = log.moves.map(done)
      return only(
        log.components.some(({ kind }) => kind === 'offset'),
        () => [
          {
            hypothesis: { type: 'offset-not-carried' },
            expects: (c) => c.before + (c.kind === 'offset' ? 0 : changeBy(c, noted)),
            fitted: 0,
          },
        ],
      )
    },
  },
}

/** All explanations that can be tried on these readings and moves, each with what the later reading would then show. m, rad. [derived]
 * @example suppositions({ feet: [], moves: [], components: [], onCircle: true }).length // 6 */
export const suppositions = (log: MoveLog): readonly Supposition[] =>
  Object.values(slips).flatMap(({ suppose }) => suppose(log))

/** Whether the next moves can be worked out from the reading where this is what happened.
 * @example isSound({ type: 'made-twice' }) // true */
export const isSound = ({ type }: Hypothesis): boolean => slips[type].basis === 'sound'
