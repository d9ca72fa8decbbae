/** Logs of two readings with a mistake between them that only the simulation knows. Machines, gauges and errors are those of `simulated-machine.ts`; where the
 * machine goes is worked out here from the line through its feet. The figures of the mistakes are common practice, no source. */
import { stepHeights } from '../../server/src/engineering/adjuster-heights.ts'
import type { Hypothesis, NotedMove } from '../../server/src/engineering/alignment/hypothesis.ts'
import type { Mirror } from '../../server/src/engineering/alignment/mirrors.ts'
import {
  allowsSteps,
  explainMismatch,
  type Mismatch,
} from '../../server/src/engineering/alignment/mismatch.ts'
import { searchMoves } from '../../server/src/engineering/alignment/move-search.ts'
import { inBothPlanes } from '../../server/src/engineering/alignment/planes.ts'
import { isSound } from '../../server/src/engineering/alignment/suppositions.ts'
import {
  type Axis,
  between,
  drawMachine,
  gauss,
  type Random,
  randomFrom,
  read,
  type SimulatedMachine,
} from './simulated-machine.ts'

const mm = 1e-3

interface Move {
  readonly vertical: number
  readonly horizontal: number
}
interface Made {
  readonly machine: SimulatedMachine
  readonly moves: readonly Move[]
}

/** What goes wrong; each part that is silent goes right. */
interface Fault {
  readonly hypothesis: (made: Made) => Hypothesis
  readonly moves?: (made: Made) => readonly Move[]
  /** As written down of the first and the later reading. */
  readonly first?: (axis: Axis) => Axis
  readonly later?: (axis: Axis, start: Axis) => Axis
}

const each = ({ moves }: Made, of: (move: Move, i: number) => Move) => moves.map(of)
const heights = (made: Made, which: ReadonlySet<number>, by: number) =>
  each(made, (move, i) => (which.has(i) ? { ...move, vertical: by * move.vertical } : move))
const flip = (plane: keyof Axis) => (axis: Axis) =>
  inBothPlanes((each) =>
    each === plane ? { offset: -axis[each].offset, slope: -axis[each].slope } : axis[each],
  )
const onCircle = (factor: number) => (axis: Axis) =>
  inBothPlanes((plane) => ({ ...axis[plane], slope: factor * axis[plane].slope }))

const pick = <T>(random: Random, from: readonly T[]): T | undefined =>
  from[Math.floor(random() * from.length)]
const names = ({ machine }: Made, which: ReadonlySet<number>) =>
  [...which].map((i) => machine.feet[i]?.name ?? '')
const raised = ({ moves }: Made) => moves.flatMap(({ vertical }, i) => (vertical === 0 ? [] : [i]))
const stationOf = (made: Made, foot: number | undefined) =>
  raised(made).filter((i) => made.machine.feet[i]?.x === made.machine.feet[foot ?? -1]?.x)

type Draw = (random: Random) => (made: Made) => Fault | undefined

const feetFault =
  (
    type: 'turned-the-wrong-way' | 'did-not-follow' | 'forgotten',
    by: number,
    which: (made: Made, random: Random) => readonly number[],
  ): Draw =>
  (random) =>
  (made) => {
    const feet = new Set(which(made, random))
    return feet.size === 0
      ? undefined
      : { hypothesis: (m) => ({ type, feet: names(m, feet) }), moves: (m) => heights(m, feet, by) }
  }
const oneFoot = (made: Made, random: Random) => [pick(random, raised(made)) ?? []].flat()
const oneStation = (made: Made, random: Random) => {
  const station = stationOf(made, pick(random, raised(made)))
  return station.length > 1 && station.length < raised(made).length ? station : []
}
const always =
  (fault: Fault): Draw =>
  () =>
  () =>
    fault

/** The moves of both end stations exchanged; feet of a station are moved alike. */
const exchanged = (made: Made, planes: 'all' | 'heights') => {
  const xs = made.machine.feet.map(({ x }) => x)
  const [aft, fwd] = [Math.min(...xs), Math.max(...xs)]
  const there = (x: number) => made.moves[xs.indexOf(x === aft ? fwd : x === fwd ? aft : x)] as Move
  return each(made, (move, i) => {
    const other = there(xs[i] ?? 0)
    return planes === 'all' ? other : { ...move, vertical: other.vertical }
  })
}
/** How an axis is written down: which parts change sign, or planes. */
const writtenAs: Readonly<Record<string, (axis: Axis) => Axis>> = {
  'top-and-bottom-swapped': flip('vertical'),
  'sides-swapped': flip('horizontal'),
  'half-turn': (axis) => flip('vertical')(flip('horizontal')(axis)),
  'offset-signs-reversed': (axis) =>
    inBothPlanes((plane) => ({ ...axis[plane], offset: -axis[plane].offset })),
  'gap-signs-reversed': (axis) => inBothPlanes((plane) => ({ ...axis[plane], slope: -axis[plane].slope })),
  // What was read at the top is written at starboard, what was read at starboard at the bottom.
  clockwise: ({ vertical: { slope, offset }, horizontal }) => ({
    vertical: { slope: -horizontal.slope, offset: -horizontal.offset },
    horizontal: { slope, offset },
  }),
  'counter-clockwise': ({ vertical, horizontal: { slope, offset } }) => ({
    vertical: { slope, offset },
    horizontal: { slope: -vertical.slope, offset: -vertical.offset },
  }),
}
const swapped = (of: Mirror, where: 'first' | 'later' | 'both'): Draw => {
  const mirror = writtenAs[of.type === 'quarter-turn' ? of.way : of.type]
  return always({
    hypothesis: () => ({ ...of, swapped: where }),
    ...(mirror && where !== 'later' && { first: mirror }),
    ...(mirror && where !== 'first' && { later: mirror }),
  })
}
/** Half a turn off in both readings is top and bottom swapped in both, where nothing was moved sideways. */
const ifSideways =
  (draw: Draw): Draw =>
  (random) =>
  (made) =>
    made.moves.some(({ horizontal }) => horizontal !== 0) ? draw(random)(made) : undefined
const swappedIn = (name: string, of: Mirror): Readonly<Record<string, Draw>> => ({
  [`${name}, later reading`]: swapped(of, 'later'),
  [`${name}, first reading`]: swapped(of, 'first'),
  [`${name}, both`]: swapped(of, 'both'),
})

/** Every mistake that is drawn, by what it is called in the table. */
const faults: Readonly<Record<string, Draw>> = {
  'a foot turned the wrong way': feetFault('turned-the-wrong-way', -1, oneFoot),
  'a station turned the wrong way': feetFault('turned-the-wrong-way', -1, oneStation),
  'all nuts turned the wrong way': feetFault('turned-the-wrong-way', -1, raised),
  'a foot did not follow': feetFault('did-not-follow', 0, oneFoot),
  'a station forgotten': feetFault('forgotten', 0, oneStation),
  'heights not done': (random) => (made) =>
    made.moves.some(({ horizontal }) => horizontal !== 0)
      ? feetFault('forgotten', 0, raised)(random)(made)
      : undefined,
  'nothing moved': always({
    hypothesis: () => ({ type: 'nothing-moved' }),
    moves: (made) => each(made, () => ({ vertical: 0, horizontal: 0 })),
  }),
  'sideways not done': always({
    hypothesis: () => ({ type: 'sideways-not-done' }),
    moves: (made) => each(made, (move) => ({ ...move, horizontal: 0 })),
  }),
  'sideways to the other side': always({
    hypothesis: () => ({ type: 'wrong-side' }),
    moves: (made) => each(made, (move) => ({ ...move, horizontal: -move.horizontal })),
  }),
  'part of the way': (random) => {
    const share = between(random, 0.2, 0.8)
    return always({
      hypothesis: () => ({ type: 'part-of-the-way', share }),
      moves: (made) =>
        each(made, (move) => ({ vertical: share * move.vertical, horizontal: share * move.horizontal })),
    })(random)
  },
  'made twice': always({
    hypothesis: () => ({ type: 'made-twice' }),
    moves: (made) => each(made, (move) => ({ vertical: 2 * move.vertical, horizontal: 2 * move.horizontal })),
  }),
  'made at the wrong end': always({
    hypothesis: () => ({ type: 'made-at-the-wrong-end', made: 'all' }),
    moves: (made) => exchanged(made, 'all'),
  }),
  'heights made at the wrong end': () => (made) =>
    made.moves.some(({ horizontal }) => horizontal !== 0)
      ? {
          hypothesis: () => ({ type: 'made-at-the-wrong-end', made: 'heights' }),
          moves: (all) => exchanged(all, 'heights'),
        }
      : undefined,
  'thread of another pitch': (random) => {
    const factor = random() < 0.5 ? between(random, 0.5, 0.85) : between(random, 1.2, 2)
    return always({
      hypothesis: () => ({ type: 'other-pitch', factor }),
      moves: (made) => each(made, (move) => ({ ...move, vertical: factor * move.vertical })),
    })(random)
  },
  'thread of the other hand': always({
    hypothesis: () => ({ type: 'other-hand' }),
    moves: (made) => each(made, (move) => ({ ...move, vertical: -move.vertical })),
  }),
  ...swappedIn('top and bottom swapped', { type: 'top-and-bottom-swapped' }),
  ...swappedIn('sides swapped', { type: 'sides-swapped' }),
  'another gauge circle': (random) => {
    const factor = random() < 0.5 ? between(random, 0.5, 0.85) : between(random, 1.2, 1.8)
    return always({
      hypothesis: () => ({ type: 'other-gauge-diameter', factor }),
      first: onCircle(factor),
      later: onCircle(factor),
    })(random)
  },
  'offset not read again': always({
    hypothesis: () => ({ type: 'offset-not-carried' }),
    later: (axis, start) => inBothPlanes((plane) => ({ ...axis[plane], offset: start[plane].offset })),
  }),
  ...swappedIn('half a turn off', { type: 'half-turn' }),
  'half a turn off, both': ifSideways(swapped({ type: 'half-turn' }, 'both')),
  ...swappedIn('a quarter off, clockwise', { type: 'quarter-turn', way: 'clockwise' }),
  ...swappedIn('a quarter off, counter-clockwise', { type: 'quarter-turn', way: 'counter-clockwise' }),
  ...swappedIn('signs of the offsets reversed', { type: 'offset-signs-reversed' }),
  ...swappedIn('signs of the gaps reversed', { type: 'gap-signs-reversed' }),
}

/** Feet of the three layouts that are common: two pairs, three pairs, a pair aft and one foot forward. */
function withFeet(m: SimulatedMachine, random: Random): SimulatedMachine {
  const [port, stbd, fwdPort] = m.feet
  const drawn = random()
  if (!port || !stbd || !fwdPort || drawn < 0.6) return m
  if (drawn < 0.8) return { ...m, feet: [port, stbd, { name: 'fwd', x: fwdPort.x, y: 0 }] }
  const x = (port.x + fwdPort.x) / 2
  return { ...m, feet: [...m.feet, { name: 'mid-port', x, y: port.y }, { name: 'mid-stbd', x, y: stbd.y }] }
}

/** Change of the axis: the line through the feet's moves, by least squares; they stand in pairs on both sides. */
function lineThrough({ feet }: SimulatedMachine, moves: readonly Move[]): Axis {
  const mean = (of: (i: number) => number) => feet.reduce((sum, _, i) => sum + of(i), 0) / feet.length
  const x = mean((i) => feet[i]?.x ?? 0)
  const spread = mean((i) => ((feet[i]?.x ?? 0) - x) ** 2)
  return inBothPlanes((plane) => {
    const level = mean((i) => moves[i]?.[plane] ?? 0)
    const slope = mean((i) => ((feet[i]?.x ?? 0) - x) * (moves[i]?.[plane] ?? 0)) / spread
    return { slope, offset: level - slope * x }
  })
}
const plusAxis = (a: Axis, b: Axis): Axis =>
  inBothPlanes((plane) => ({
    slope: a[plane].slope + b[plane].slope,
    offset: a[plane].offset + b[plane].offset,
  }))

interface SimulatedLog {
  readonly truth?: Hypothesis
  readonly mismatch: Mismatch
  /** Root of chi-square of what the mistake alone brings, without noise: how many standard uncertainties it is. */
  readonly effect: number
}

/** Undefined where the mistake cannot be made on the moves drawn. */
function drawLog(random: Random, draw: Draw | undefined): SimulatedLog | undefined {
  const m = withFeet(drawMachine(random, between(random, 0.05, 0.3)), random)
  // Half of the machines are to stand off the shaft: cold, dry, or with a shaft end that hangs.
  const off = random() < 0.5 ? 1 : 0
  const target = inBothPlanes(() => ({
    offset: off * between(random, -0.5, 0.5) * mm,
    slope: off * between(random, -1.5, 1.5) * 1e-3,
  }))
  const wrong = draw?.(random)
  // The reading before: whether its places are swapped does not depend on the moves.
  const firstFault = wrong?.({ machine: m, moves: m.feet.map(() => ({ vertical: 1, horizontal: 1 })) })
  const firstAxis = firstFault?.first?.(m.start) ?? m.start
  const first = read(m, firstAxis, random)
  const found = searchMoves({
    feet: m.feet.map((foot) => ({ ...foot, heights: stepHeights(m.step) })),
    error: inBothPlanes((plane) => ({
      offset: first.offset[plane].value - target[plane].offset,
      slope: first.gaps.slope[plane].value - target[plane].slope,
    })),
    limit: { offset: m.offsetLimit, slope: m.gapLimit / m.diameter },
    goal: 0.5,
    stray: m.step / 2,
  })
  if (!found.ok) throw new Error(found.problem.type)
  const slides = random() < 0.7
  const moves = found.value.moves.map(({ vertical, horizontal }) => ({
    vertical,
    horizontal: slides ? Math.round(horizontal / (0.01 * mm)) * 0.01 * mm : 0,
  }))
  const made = { machine: m, moves }
  const fault = wrong?.(made)
  if (draw && !fault) return undefined
  const intended = fault?.moves?.(made) ?? moves
  // A nut is turned to some three degrees, its thread is true to one part in a hundred, a dial at the foot to 0.01 mm.
  const done = intended.map(({ vertical, horizontal }) => ({
    vertical: vertical === 0 ? 0 : vertical * (1 + 0.01 * gauss(random)) + (m.step / 10) * gauss(random),
    horizontal: horizontal === 0 ? 0 : horizontal + 0.01 * mm * gauss(random),
  }))
  const seen = (axis: Axis) => fault?.later?.(axis, m.start) ?? axis
  const later = read(m, seen(plusAxis(m.start, lineThrough(m, done))), random)
  const noted = moves.map(
    ({ vertical, horizontal }): NotedMove => ({
      vertical: { value: vertical, standard: vertical === 0 ? 0 : Math.hypot(m.step / 10, 0.01 * vertical) },
      horizontal: { value: horizontal, standard: horizontal === 0 ? 0 : 0.01 * mm },
      byNut: vertical,
    }),
  )
  const explain = (before: Axis, after: Axis) =>
    explainMismatch({
      feet: m.feet,
      moves: noted,
      before: stand(before, first),
      after: stand(after, later),
    })
  const asRead = ({ gaps, offset }: ReturnType<typeof read>) =>
    inBothPlanes((plane) => ({ slope: gaps.slope[plane].value, offset: offset[plane].value }))
  const explained = explain(asRead(first), asRead(later))
  const alone = explain(firstAxis, seen(plusAxis(m.start, lineThrough(m, intended))))
  if (!explained.ok || !alone.ok) throw new Error('feet that set no slope')
  return {
    ...(fault && { truth: fault.hypothesis(made) }),
    mismatch: explained.value,
    effect: Math.sqrt(alone.value.chiSquare),
  }
}

const stand = (axis: Axis, { gaps, offset }: ReturnType<typeof read>) => ({
  slope: inBothPlanes((plane) => ({ value: axis[plane].slope, standard: gaps.slope[plane].standard })),
  offset: inBothPlanes((plane) => ({ value: axis[plane].offset, standard: offset[plane].standard })),
})

/** Two hypotheses that say the same, whatever figure was fitted. */
const key = (of: Hypothesis): string =>
  JSON.stringify({ ...of, share: 0, factor: 0, ...('feet' in of && { feet: [...of.feet].sort() }) })

/** How many things a person reads: single feet of which each would explain it alike are one. */
const asRead = (named: readonly Hypothesis[]): number =>
  new Set(named.map((of) => ('feet' in of && of.feet.length === 1 ? of.type : key(of)))).size

export interface Named {
  drawn: number
  alone: number
  /** Among at most three, alone counted too. */
  few: number
  /** Among more than three. */
  many: number
  unnamed: number
  wrongly: number
  steps: number
  /** Steps given where the log is beyond noise, and the mistake puts the reading or the bed in doubt. */
  stepsWrongly: number
}

export const mistakeNames: readonly string[] = Object.keys(faults)

const none = (): Named => ({
  drawn: 0,
  alone: 0,
  few: 0,
  many: 0,
  unnamed: 0,
  wrongly: 0,
  steps: 0,
  stepsWrongly: 0,
})

function count(tally: Named, truth: Hypothesis, mismatch: Mismatch): void {
  const named = mismatch.explanations.map(({ hypothesis }) => hypothesis)
  const right = named.some((of) => key(of) === key(truth))
  tally.drawn += 1
  if (named.length === 0) tally.unnamed += 1
  else if (!right) tally.wrongly += 1
  else if (asRead(named) > 3) tally.many += 1
  else tally.few += 1
  if (right && asRead(named) === 1) tally.alone += 1
  if (allowsSteps(mismatch)) tally.steps += 1
  if (allowsSteps(mismatch) && !mismatch.noise && !isSound(truth)) tally.stepsWrongly += 1
}

/** Logs with this mistake: so many with an effect beyond 3 U (six standard uncertainties), and at least so many between half of that and that,
 * as far as ten times `cases` draws have them. The same each time. */
export function namedOf(
  name: string,
  cases: number,
  leastNear = 0,
): { readonly beyond: Readonly<Named>; readonly near: Readonly<Named> } {
  const random = randomFrom(20_261_130 + mistakeNames.indexOf(name))
  const [beyond, near] = [none(), none()]
  const wanted = (tries: number) =>
    beyond.drawn < cases ? tries < 100 * cases : near.drawn < leastNear && tries < 10 * cases
  for (let tries = 0; wanted(tries); tries++) {
    const log = drawLog(random, faults[name])
    if (!log?.truth || log.effect < 3) continue
    if (log.effect < 6) count(near, log.truth, log.mismatch)
    else if (beyond.drawn < cases) count(beyond, log.truth, log.mismatch)
  }
  return { beyond, near }
}

/** Logs without a mistake: how many were beyond noise, and of how many something was named. */
export function cleanLogs(cases: number): { readonly alarms: number; readonly named: number } {
  const random = randomFrom(20_261_129)
  let [alarms, named] = [0, 0]
  for (let i = 0; i < cases; i++) {
    const mismatch = drawLog(random, undefined)?.mismatch
    if (mismatch && !mismatch.noise) alarms += 1
    if (mismatch && mismatch.explanations.length > 0) named += 1
  }
  return { alarms, named }
}
