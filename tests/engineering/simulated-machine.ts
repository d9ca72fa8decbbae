/** A machine on its feet with a true pose that nobody knows: read with a gauge of limited step, moved by nuts with errors of their own. The
 * figures of the errors are common practice, no source. */
import { stepHeights } from '../../server/src/engineering/adjuster-heights.ts'
import { fitFace } from '../../server/src/engineering/alignment/face.ts'
import { gapVariation } from '../../server/src/engineering/alignment/gap-variation.ts'
import { goalOf } from '../../server/src/engineering/alignment/goal.ts'
import { searchMoves } from '../../server/src/engineering/alignment/move-search.ts'
import { type InPlanes, inBothPlanes } from '../../server/src/engineering/alignment/planes.ts'
import { rigidMachine } from '../../server/src/engineering/alignment/rigid-move.ts'
import { fitRim } from '../../server/src/engineering/alignment/rim.ts'
import { verdict } from '../../server/src/engineering/alignment/verdict.ts'
import type { Verdict } from '../../server/src/quantity/conformity.ts'
import { exactly, type Uncertain } from '../../server/src/quantity/uncertainty.ts'

export type Random = () => number

/** Mulberry32: small, repeatable, good enough to draw machines from. */
export function randomFrom(seed: number): Random {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

const mm = 1e-3
export const between = (random: Random, low: number, high: number) => low + (high - low) * random()
export const gauss = (random: Random) =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())

export type Axis = InPlanes<{ readonly offset: number; readonly slope: number }>

export interface SimulatedMachine {
  readonly feet: readonly { readonly name: string; readonly x: number; readonly y: number }[]
  readonly diameter: number
  readonly gapLimit: number
  readonly offsetLimit: number
  readonly gaugeStep: number
  /** Height of a step of the nuts. */
  readonly step: number
  readonly angles: readonly number[]
  /** Feelers that go in round down, dials to the nearest. */
  readonly feelers: boolean
  readonly start: Axis
}

export function drawMachine(random: Random, gaugeShare: number): SimulatedMachine {
  const aft = between(random, 0.12, 0.35)
  const fwd = aft + between(random, 0.25, 0.8)
  const half = between(random, 0.08, 0.25)
  const gapLimit = between(random, 0.05, 0.2) * mm
  const count = random() < 0.7 ? 4 : 3 + Math.floor(random() * 6)
  const turned = count === 4 ? 0 : between(random, 0, 1)
  return {
    feet: [
      { name: 'aft-port', x: aft, y: -half },
      { name: 'aft-stbd', x: aft, y: half },
      { name: 'fwd-port', x: fwd, y: -half },
      { name: 'fwd-stbd', x: fwd, y: half },
    ],
    diameter: between(random, 0.08, 0.25),
    gapLimit,
    offsetLimit: gapLimit * between(random, 0.8, 2),
    gaugeStep: gapLimit * gaugeShare,
    step: ([1.5, 1.75, 2, 2.5][Math.floor(random() * 4)] ?? 2) * (mm / 12),
    angles: Array.from({ length: count }, (_, i) => turned + (i * 2 * Math.PI) / count),
    feelers: random() < 0.5,
    start: inBothPlanes(() => ({
      offset: between(random, -1.5, 1.5) * mm,
      slope: between(random, -5, 5) * 1e-3,
    })),
  }
}

interface Read {
  readonly gaps: ReturnType<typeof faceOf>
  readonly offset: InPlanes<Uncertain>
  readonly verdict: Verdict
  readonly gapVariation: Uncertain
  readonly away: Uncertain
}

const marked = (value: number, { gaugeStep, feelers }: SimulatedMachine, random: Random): number => {
  const felt = value + 0.2 * gaugeStep * gauss(random)
  return (feelers ? Math.floor(felt / gaugeStep) : Math.round(felt / gaugeStep)) * gaugeStep
}

function faceOf(m: SimulatedMachine, axis: Axis, random: Random) {
  const gaps = m.angles.map((angle) => {
    const { vertical, horizontal } = axis
    const true_ =
      2 * mm - (m.diameter / 2) * (vertical.slope * Math.cos(angle) + horizontal.slope * Math.sin(angle))
    return { angle, value: marked(true_, m, random) }
  })
  const fit = fitFace(gaps, { radius: m.diameter / 2, gaugeStep: m.gaugeStep })
  if (!fit.ok) throw new Error(fit.problem.type)
  return fit.value
}

export function read(m: SimulatedMachine, axis: Axis, random: Random): Read {
  const gaps = faceOf(m, axis, random)
  const rims = m.angles.map((angle) => ({
    angle,
    value: marked(
      axis.vertical.offset * Math.cos(angle) + axis.horizontal.offset * Math.sin(angle),
      m,
      random,
    ),
  }))
  const rim = fitRim(rims, { gaugeStep: m.gaugeStep })
  if (!rim.ok) throw new Error(rim.problem.type)
  const { offset } = rim.value
  const variation = gapVariation(gaps)
  const away = {
    value: Math.hypot(offset.vertical.value, offset.horizontal.value),
    standard: Math.max(offset.vertical.standard, offset.horizontal.standard),
  }
  const verdicts = [verdict(variation, m.gapLimit), verdict(away, m.offsetLimit)]
  return {
    gaps,
    offset,
    gapVariation: variation,
    away,
    verdict: verdicts.includes('outside')
      ? 'outside'
      : verdicts.includes('undecided')
        ? 'undecided'
        : 'within',
  }
}

const isInside = (m: SimulatedMachine, { vertical, horizontal }: Axis): boolean =>
  Math.hypot(vertical.slope, horizontal.slope) * m.diameter <= m.gapLimit &&
  Math.hypot(vertical.offset, horizontal.offset) <= m.offsetLimit

export interface Outcome {
  /** How the plan sees the first move: with room to prove it, without, or not possible in these steps. */
  readonly reach: 'with margin' | 'without margin' | 'not in these steps'
  /** Moves made until a reading said within; undefined when none of six did. */
  readonly moves: number | undefined
  /** A reading said within while the truth was outside. */
  readonly wrong: boolean
}

/** Reads and moves until a reading says within, six readings at most. Where no steps would serve better than the machine as it stands, it is read
 * again and nothing is moved. */
function align(m: SimulatedMachine, random: Random): Outcome {
  let axis = m.start
  let reach: Outcome['reach'] = 'with margin'
  const machine = rigidMachine(m.feet)
  if (!machine.ok) throw new Error(machine.problem.type)
  let moves = 0
  for (let readings = 1; readings <= 6; readings++) {
    const seen = read(m, axis, random)
    if (seen.verdict === 'within') return { reach, moves, wrong: !isInside(m, axis) }
    const goal = Math.min(
      goalOf(seen.gapVariation, seen.gapVariation, m.gapLimit),
      goalOf(seen.away, seen.away, m.offsetLimit),
    )
    const found = searchMoves({
      feet: m.feet.map((foot) => ({ ...foot, heights: stepHeights(m.step) })),
      error: inBothPlanes((plane) => ({
        offset: seen.offset[plane].value,
        slope: seen.gaps.slope[plane].value,
      })),
      limit: { offset: m.offsetLimit, slope: m.gapLimit / m.diameter },
      goal,
      stray: m.step / 2,
    })
    if (!found.ok) throw new Error(found.problem.type)
    const { used } = found.value
    if (readings === 1)
      reach = used <= goal + 1e-9 ? 'with margin' : used <= 1 ? 'without margin' : 'not in these steps'
    if (found.value.touched > 0) moves += 1
    // A nut is turned to some three degrees, its thread is true to one part in a hundred, a dial at the foot to 0.01 mm.
    const done = found.value.moves.map(({ vertical, horizontal }) => ({
      vertical: exactly(
        vertical === 0 ? 0 : vertical * (1 + 0.01 * gauss(random)) + (m.step / 10) * gauss(random),
      ),
      horizontal: exactly(horizontal === 0 ? 0 : horizontal + 0.01 * mm * gauss(random)),
    }))
    const change = machine.value(done)
    const before = axis
    axis = inBothPlanes((plane) => ({
      offset: before[plane].offset + change[plane].offset.value,
      slope: before[plane].slope + change[plane].slope.value,
    }))
  }
  return { reach, moves: undefined, wrong: false }
}

interface Reached {
  count: number
  byOne: number
  byTwo: number
}

export interface Tally {
  readonly withMargin: Readonly<Reached>
  readonly withoutMargin: Readonly<Reached>
  readonly impossible: number
  readonly saidWithin: number
  readonly wrong: number
}

/** So many machines, each aligned; the same machines each time. */
export function tally(cases: number, gaugeShare: number): Tally {
  const random = randomFrom(20_261_125)
  const withMargin = { count: 0, byOne: 0, byTwo: 0 }
  const withoutMargin = { count: 0, byOne: 0, byTwo: 0 }
  let [impossible, saidWithin, wrong] = [0, 0, 0]
  for (let i = 0; i < cases; i++) {
    const outcome = align(drawMachine(random, gaugeShare), random)
    const moves = outcome.moves ?? Number.POSITIVE_INFINITY
    if (outcome.moves !== undefined) saidWithin += 1
    if (outcome.wrong) wrong += 1
    if (outcome.reach === 'not in these steps') {
      impossible += 1
      continue
    }
    const into = outcome.reach === 'with margin' ? withMargin : withoutMargin
    into.count += 1
    if (moves <= 1) into.byOne += 1
    if (moves <= 2) into.byTwo += 1
  }
  return { withMargin, withoutMargin, impossible, saidWithin, wrong }
}
