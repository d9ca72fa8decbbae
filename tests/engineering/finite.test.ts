// Whatever numbers come in, what comes out is finite, a problem as data, or OutOfRange: NaN, infinity or overflow never reach a plan.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { shimHeights, stepHeights } from '../../server/src/engineering/adjuster-heights.ts'
import { nutMove, nutTravel } from '../../server/src/engineering/adjusters.ts'
import { angleProblem, normalAngle } from '../../server/src/engineering/alignment/angles.ts'
import { closure } from '../../server/src/engineering/alignment/closure.ts'
import { gapsFromDial, rimFromDial, sagReading } from '../../server/src/engineering/alignment/dial.ts'
import { fitFace } from '../../server/src/engineering/alignment/face.ts'
import { footCorrections } from '../../server/src/engineering/alignment/feet.ts'
import { assumedGapLimit, gapVariation } from '../../server/src/engineering/alignment/gap-variation.ts'
import { goalOf, provableShare } from '../../server/src/engineering/alignment/goal.ts'
import { searchMoves } from '../../server/src/engineering/alignment/move-search.ts'
import { poseFromFace, poseFromTwoPlanes } from '../../server/src/engineering/alignment/pose.ts'
import { gather } from '../../server/src/engineering/alignment/readings.ts'
import { rigidMove } from '../../server/src/engineering/alignment/rigid-move.ts'
import { fitRim } from '../../server/src/engineering/alignment/rim.ts'
import { softFeet } from '../../server/src/engineering/alignment/soft-foot.ts'
import { speedLimits } from '../../server/src/engineering/alignment/speed-limits.ts'
import { shaftEndTarget, sumOfTargets, targetCold } from '../../server/src/engineering/alignment/target.ts'
import { gaugeStepToDecide, verdict } from '../../server/src/engineering/alignment/verdict.ts'
import { ampacity } from '../../server/src/engineering/electrical/ampacity.ts'
import { awgArea, awgDiameter, awgFromArea } from '../../server/src/engineering/electrical/awg.ts'
import { inParallel, inSeries } from '../../server/src/engineering/electrical/bank.ts'
import {
  clearing,
  clearingCurve,
  largestEnergy,
} from '../../server/src/engineering/electrical/clearing-curve.ts'
import { conductorResistance, resistanceAt } from '../../server/src/engineering/electrical/conductor.ts'
import { dcCurrent, inverterVoltage, lineCurrent } from '../../server/src/engineering/electrical/current.ts'
import { faultCurrents, faultFlow, solveNetwork } from '../../server/src/engineering/electrical/dc-network.ts'
import {
  ambientFactor,
  bundlingFactor,
  machinerySpaceFactor,
} from '../../server/src/engineering/electrical/derating.ts'
import { faultCurrent } from '../../server/src/engineering/electrical/fault-current.ts'
import {
  averagePower,
  closingSurge,
  dischargeTime,
  endVoltage,
  peakPower,
  prechargeEnergy,
  timeToFraction,
} from '../../server/src/engineering/electrical/precharge.ts'
import { leastRating, protectionWindow } from '../../server/src/engineering/electrical/protection.ts'
import { ratingInAmbient } from '../../server/src/engineering/electrical/rating-in-ambient.ts'
import { selectivity } from '../../server/src/engineering/electrical/selectivity.ts'
import { ratingAtLeast, ratingAtMost } from '../../server/src/engineering/electrical/standard-ratings.ts'
import {
  dcDrop,
  operatingResistance,
  threePhaseDrop,
  touchingCoreReactance,
} from '../../server/src/engineering/electrical/voltage-drop.ts'
import {
  adiabaticConstant,
  sectionToWithstand,
  withstandTime,
} from '../../server/src/engineering/electrical/withstand.ts'
import { compression } from '../../server/src/engineering/seal.ts'
import { shimPack } from '../../server/src/engineering/shim-packs.ts'
import { parseThread } from '../../server/src/engineering/thread.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'

const odd = [0, -0, Number.NaN, 1 / 0, -1 / 0, 1e300, -1e300, 5e-324, 1e-9, 1e-3, 1, 90, 100, 1e9]
/** Numbers of every size, those of boats among them. */
const any = fc.oneof(
  fc.constantFrom(...odd),
  fc.double(),
  fc.double({ min: -1, max: 1, noNaN: true }),
  fc.double({ min: 0, max: 5e-3, noNaN: true }),
)
const numbers = fc.array(any, { minLength: 12, maxLength: 12 })

/** Every number in a result, however deep. */
function figuresIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value]
  if (value instanceof Object) return Object.values(value).flatMap(figuresIn)
  return []
}

type Work = (n: (i: number) => number) => unknown

const foot = (name: string, x: number, y: number) => ({ name, x, y })
const both = (value: number, standard: number) => ({
  vertical: { value, standard },
  horizontal: { value: standard, standard },
})
const readings = (n: (i: number) => number) =>
  [0, 1, 2, 3].map((i) => ({ angle: i % 2 === 0 ? (i * Math.PI) / 2 : n(i + 4), value: n(i) }))
const faceOf = (n: (i: number) => number) => {
  const fit = fitFace(readings(n), { radius: n(8), gaugeStep: n(9) })
  return fit.ok ? fit.value : undefined
}

const works: Readonly<Record<string, Work>> = {
  nutTravel: (n) => nutTravel({ turns: n(0), flats: n(1) }, n(2)),
  nutMove: (n) => nutMove(n(0), { pitch: n(1), hand: 'left' }, n(2)),
  stepHeights: (n) => stepHeights(n(0), { up: n(1), down: n(2) }).from(n(3)),
  shimHeights: (n) => shimHeights([n(0), n(1)])(n(2)).upTo(n(3)),
  shimPack: (n) => shimPack(n(0), [n(1), n(2), n(3)]),
  parseThread: (n) => parseThread(`M${n(0)}x${n(1)}`),
  compression: (n) => compression({ free: n(0), fitted: n(1) }),
  normalAngle: (n) => normalAngle(n(0)),
  angleProblem: (n) => angleProblem([n(0), n(1), n(2)]),
  closure: (n) => closure(gather(readings(n), n(9))),
  sagReading: (n) => sagReading(n(0), n(1)),
  rimFromDial: (n) =>
    fitRim(rimFromDial(readings(n), { carriedBy: 'machine', droop: n(8) }), { gaugeStep: n(9) }),
  gapsFromDial: (n) => fitFace(gapsFromDial(readings(n)), { radius: n(8), gaugeStep: n(9) }),
  fitFace: faceOf,
  gapVariation: (n) => {
    const fit = faceOf(n)
    return fit && gapVariation(fit, { diameter: n(10) })
  },
  footCorrections: (n) => {
    const fit = faceOf(n)
    return (
      fit && footCorrections(poseFromFace(fit, 'pilot'), [foot('a', n(10), n(11)), foot('b', n(3), n(4))])
    )
  },
  poseFromTwoPlanes: (n) =>
    poseFromTwoPlanes({ x: n(0), offset: both(n(1), n(2)) }, { x: n(3), offset: both(n(4), n(5)) }),
  rigidMove: (n) =>
    rigidMove([
      { ...foot('a', n(0), n(1)), ...both(n(2), n(3)) },
      { ...foot('b', n(4), n(5)), ...both(n(6), n(7)) },
    ]),
  searchMoves: (n) =>
    searchMoves({
      feet: [n(0), n(1), n(2)].map((x, i) => ({ ...foot(`${i}`, x, 0), heights: stepHeights(1e-4) })),
      error: {
        vertical: { offset: n(3), slope: n(4) },
        horizontal: { offset: n(5), slope: n(6) },
      },
      limit: { offset: n(7), slope: n(8) },
      goal: n(9),
      stray: n(10),
      tries: { left: 200 },
    }),
  goalOf: (n) => [
    provableShare({ value: n(0), standard: n(1) }, { value: n(2), standard: n(3) }, n(4)),
    goalOf({ value: n(0), standard: n(1) }, { value: n(2), standard: n(3) }, n(4)),
  ],
  verdict: (n) => [
    verdict({ value: n(0), standard: n(1) }, n(2)),
    gaugeStepToDecide({ value: n(0), standard: n(1) }, n(2), { gaugeStep: n(3), gaugeExplains: true }),
  ],
  softFeet: (n) =>
    softFeet(
      [0, 1, 2].map((i) => ({ name: `${i}`, lift: n(i) })),
      n(3),
      n(4),
    ),
  limits: (n) => [assumedGapLimit(n(0)), speedLimits(n(1))],
  targets: (n) => [
    sumOfTargets([
      shaftEndTarget({ droop: n(0), slope: n(1) }),
      shaftEndTarget({ droop: n(2), slope: n(3) }),
    ]),
    targetCold([
      { ...foot('a', n(4), 0), growth: n(5) },
      { ...foot('b', n(6), 0), growth: n(7) },
    ]),
  ],
  gauge: (n) => [awgArea(n(0)), awgDiameter(n(0)), awgFromArea(n(1))],
  conductor: (n) => [
    conductorResistance({ section: { system: 'metric', mm2: n(0) } }),
    resistanceAt({ resistance: n(1), conductorC: n(2) }),
    operatingResistance({ ohmPerMetre: n(1), insulationC: n(2) }),
  ],
  ampacity: (n) =>
    ampacity({
      section: { system: 'metric', mm2: n(0) },
      insulationC: n(1),
      place: 'machinery-space',
      bundled: n(2),
    }),
  derating: (n) => [
    ambientFactor({ insulationC: n(0), ambientC: n(1) }),
    machinerySpaceFactor(n(0)),
    bundlingFactor(n(2)),
  ],
  current: (n) => [
    dcCurrent({
      shaftPower: n(0),
      lowestVoltage: n(1),
      motorEfficiency: n(2),
      inverterEfficiency: n(3),
    }),
    lineCurrent({ shaftPower: n(0), lineVoltage: n(1), powerFactor: n(2), efficiency: n(3) }),
    inverterVoltage(n(1)),
    faultCurrent({ voltage: n(1), internalResistance: n(4) }),
  ],
  drop: (n) => [
    dcDrop({
      current: n(0),
      out: { length: n(1), ohmPerMetre: n(2) },
      back: { length: n(3), ohmPerMetre: n(2) },
    }),
    threePhaseDrop({
      current: n(0),
      run: { length: n(1), ohmPerMetre: n(2) },
      ohmReactancePerMetre: touchingCoreReactance(n(4)),
      powerFactor: n(5),
    }),
  ],
  withstand: (n) => [
    adiabaticConstant({ initialC: n(0), finalC: n(1) }),
    withstandTime({ area: n(2), k: n(3), current: n(4) }),
    sectionToWithstand({ current: n(4), time: n(5), k: n(3) }),
  ],
  curves: (n) => {
    const curve = clearingCurve([
      { current: n(0), time: n(1) },
      { current: n(2), time: n(3) },
    ])
    const range = { least: n(4), most: n(5) }
    return [
      clearing(curve, n(4), n(6)),
      largestEnergy(curve, range, n(6)),
      selectivity({ rating: n(7), curve }, { rating: n(8), curve }, range, n(6)),
    ]
  },
  ratings: (n) => [ratingAtLeast(n(0), 'us'), ratingAtMost(n(1), 'iec'), ratingInAmbient(n(2), n(3))],
  precharge: (n) => {
    const given = { voltage: n(0), resistance: n(1), capacitance: n(2), across: n(3) }
    return [
      endVoltage(given),
      timeToFraction(given, n(4)),
      prechargeEnergy(given, n(5)),
      peakPower(given),
      averagePower({ energy: n(6), interval: n(7) }),
      closingSurge({ difference: n(8), loop: n(9) }),
      dischargeTime({ ...given, to: n(9) }),
    ]
  },
  bank: (n) => {
    const units = [3, 6, 9].map((i) => ({ emf: n(i), resistance: n(i + 1), capacity: n(i + 2) }))
    return [inSeries(units, n(0)), inParallel(units)]
  },
  network: (n) => {
    const network = {
      links: [
        { ends: ['a', 'b'] as const, resistance: n(0) },
        { ends: ['b', 'c'] as const, resistance: n(1) },
      ],
      sources: [
        { negative: '-', positive: 'a', emf: n(2), resistance: n(3) },
        { negative: 'c', positive: 'a', emf: n(4), resistance: n(5) },
      ],
    }
    const draws = [
      { negative: '-', positive: 'c', power: n(6) },
      { negative: 'c', positive: 'b', power: n(7), current: n(8) },
      { negative: '-', positive: 'b', current: n(9) },
    ]
    const solution = solveNetwork({ ...network, draws })
    const voltages = solution.outcome === 'solved' ? [...solution.voltages.values()] : []
    return [solution, voltages, faultCurrents(network, [['a', '-']]), faultFlow(network, ['b', '-'])]
  },
  protection: (n) => [leastRating(n(0)), protectionWindow({ current: n(0), ampacity: n(1), volts: n(2) })],
}

describe('whatever numbers come in', () => {
  it.each(Object.entries(works))('%s gives finite figures, a problem, or OutOfRange', (_, work) => {
    fc.assert(
      fc.property(numbers, (all) => {
        let result: unknown
        try {
          result = work((i) => all[i] ?? 0)
        } catch (error) {
          expect(error).toBeInstanceOf(OutOfRange)
        }
        expect(figuresIn(result).filter((figure) => !Number.isFinite(figure))).toEqual([])
      }),
      { numRuns: 2000 },
    )
  })
})
