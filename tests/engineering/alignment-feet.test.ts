import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { footCorrections } from '../../server/src/engineering/alignment/feet.ts'
import { gapVariation } from '../../server/src/engineering/alignment/gap-variation.ts'
import {
  lineAt,
  type OffsetPlane,
  type Pose,
  poseFromFace,
  poseFromTwoPlanes,
} from '../../server/src/engineering/alignment/pose.ts'
import { movedFace, movedRim, rigidMove } from '../../server/src/engineering/alignment/rigid-move.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'
import { exactly } from '../../server/src/quantity/uncertainty.ts'
import {
  deg,
  face,
  feetOf,
  gapAt,
  gapOf,
  mm,
  movedPose,
  moves,
  ok,
  problem,
  rim,
  rimAt,
  round,
  type TruePose,
} from './alignment-helpers.ts'

const radius = 55 * mm
const fourFeet = feetOf([0.18, -0.14], [0.18, 0.14], [0.56, -0.14], [0.56, 0.14])
const double = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const truePose = fc.record({
  oz: double(-0.5e-3, 0.5e-3),
  oy: double(-0.5e-3, 0.5e-3),
  tv: double(-5e-3, 5e-3),
  th: double(-5e-3, 5e-3),
})

const gapsOf = (pose: TruePose) =>
  [0, 90, 180, 270].map((a) => ({ angle: a * deg, value: gapOf(pose, 2 * mm, radius, a * deg) }))
const rimsOf = ({ oz, oy }: TruePose) => round([oz, oy, -oz, -oy])
const read = (pose: TruePose) => ({ gaps: face(gapsOf(pose), radius), rims: rim(rimsOf(pose)) })
const poseOf = (pose: TruePose): Pose => {
  const { gaps, rims } = read(pose)
  return poseFromFace(gaps, rims)
}
const inFull = (of: Pose) =>
  [of.vertical.offset, of.vertical.slope, of.horizontal.offset, of.horizontal.slope].map((u) => u.value)
const zeros = [0, 0, 0, 0].map((v) => expect.closeTo(v, 12))

describe('foot corrections', () => {
  it('put the machine axis on the shaft axis: the foot comes up by what the axis lies low there', () => {
    const [, , fore] = ok(
      footCorrections(poseOf({ oz: -0.2 * mm, oy: 0.1 * mm, tv: -1e-3, th: 2e-3 }), fourFeet),
    ).feet
    // Axis at x = 0.56: 0.2 + 0.56 mm low; 0.1 + 1.12 mm to starboard.
    expect(fore?.vertical.value).toBeCloseTo(0.76 * mm, 12)
    expect(fore?.horizontal.value).toBeCloseTo(-1.22 * mm, 12)
  })
  it('applied, bring the predicted pose to zero, and the predicted readings to flat', () => {
    fc.assert(
      fc.property(truePose, (truth) => {
        const { gaps, rims } = read(truth)
        const wanted = ok(footCorrections(poseFromFace(gaps, rims), fourFeet)).feet
        const move = ok(
          rigidMove(
            moves(
              fourFeet,
              wanted.map((f) => [f.vertical.value, f.horizontal.value]),
            ),
          ),
        )
        expect(inFull(movedPose(poseFromFace(gaps, rims), move))).toEqual(zeros)
        expect(gapVariation(movedFace(gaps, move)).value).toBeCloseTo(0, 12)
        for (const a of [0, 1, 2, 4]) {
          expect(rimAt(movedRim(rims, move), a).value).toBeCloseTo(0, 12)
          expect(gapAt(movedFace(gaps, move), a).value).toBeCloseTo(gaps.gap.value, 12)
        }
      }),
    )
  })
  it('go to a target other than zero: thermal growth, a drooping shaft end', () => {
    const target = {
      vertical: { offset: 0.3 * mm, slope: 0.8e-3 },
      horizontal: { offset: -0.05 * mm, slope: -0.1e-3 },
    }
    fc.assert(
      fc.property(truePose, (truth) => {
        const wanted = ok(footCorrections(poseOf(truth), fourFeet, target)).feet
        const move = ok(
          rigidMove(
            moves(
              fourFeet,
              wanted.map((f) => [f.vertical.value, f.horizontal.value]),
            ),
          ),
        )
        expect(inFull(movedPose(poseOf(truth), move))).toEqual(
          [0.3 * mm, 0.8e-3, -0.05 * mm, -0.1e-3].map((v) => expect.closeTo(v, 12)),
        )
      }),
    )
  })
  it('do not depend on y: the roll stays as it is', () => {
    const { feet } = ok(footCorrections(poseOf({ oz: 1e-4, oy: 1e-4, tv: 1e-3, th: 1e-3 }), fourFeet))
    expect(feet[0]?.vertical).toEqual(feet[1]?.vertical)
  })
  it('seen in a mirror change sign sideways only', () => {
    fc.assert(
      fc.property(truePose, (truth) => {
        const mirrored = { ...truth, oy: -truth.oy, th: -truth.th }
        const [a, b] = [truth, mirrored].map((t) => ok(footCorrections(poseOf(t), fourFeet)).feet[2])
        expect(b?.vertical.value).toBeCloseTo(a?.vertical.value ?? Number.NaN, 12)
        expect(b?.horizontal.value).toBeCloseTo(-(a?.horizontal.value ?? Number.NaN), 12)
      }),
    )
  })
  it('carry the uncertainty of offset and slope, which are read apart: root of squares', () => {
    const { gaps, rims } = read({ oz: 0, oy: 0, tv: 1e-3, th: 0 })
    const [near, , far] = ok(footCorrections(poseFromFace(gaps, rims), fourFeet)).feet
    const [o, t] = [rims.offset.vertical.standard, gaps.slope.vertical.standard]
    expect(near?.vertical.standard).toBeCloseTo(Math.sqrt(o ** 2 + (0.18 * t) ** 2), 12)
    expect(far?.vertical.standard).toBeCloseTo(Math.sqrt(o ** 2 + (0.56 * t) ** 2), 12)
  })
  it('with a pilot pivot about the coupling; the offset counts as nothing', () => {
    const { gaps } = read({ oz: 0, oy: 0, tv: -1e-3, th: 0 })
    const result = ok(footCorrections(poseFromFace(gaps, 'pilot'), fourFeet))
    expect(result.offsetBasis).toBe('pilot')
    expect(result.feet.map((f) => f.vertical.value)).toEqual(
      [0.18, 0.18, 0.56, 0.56].map((x) => expect.closeTo(x * mm, 12)),
    )
  })
  it('with an offset not read take out the slope alone, keep the coupling centre where it is, and say so', () => {
    const { gaps } = read({ oz: 0.4 * mm, oy: 0, tv: -1e-3, th: 0 })
    const target = { vertical: { offset: 0.3 * mm, slope: 0 }, horizontal: { offset: 0, slope: 0 } }
    const result = ok(footCorrections(poseFromFace(gaps, 'unknown'), fourFeet, target))
    expect(result.offsetBasis).toBe('unknown')
    const move = ok(
      rigidMove(
        moves(
          fourFeet,
          result.feet.map((f) => [f.vertical.value, f.horizontal.value]),
        ),
      ),
    )
    expect(move.vertical.slope.value).toBeCloseTo(1e-3, 12)
    expect(move.vertical.offset.value).toBeCloseTo(0, 12)
    expect(movedPose(poseFromFace(gaps, 'unknown'), move).offsetBasis).toBe('unknown')
  })
  it('of feet all at one station are a problem that names them: no slope can be set', () => {
    const one = feetOf([0.3, -0.14], [0.3, 0.14])
    const wanted = { type: 'feet-at-one-station', feet: ['foot 1', 'foot 2'] }
    expect(problem(footCorrections(poseOf({ oz: 0, oy: 0, tv: 1e-3, th: 0 }), one))).toEqual(wanted)
    expect(problem(rigidMove(moves(one, [[1 * mm, 0]])))).toEqual(wanted)
    expect(problem(rigidMove([])).type).toBe('feet-at-one-station')
  })
  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1e9])('a foot at %d is refused', (bad) => {
    const pose = poseOf({ oz: 0, oy: 0, tv: 0, th: 0 })
    expect(() => footCorrections(pose, feetOf([0.18, 0], [bad, 0]))).toThrow(OutOfRange)
    expect(() => footCorrections(pose, feetOf([0.18, bad], [0.56, 0]))).toThrow(OutOfRange)
    const target = { vertical: { offset: bad, slope: 0 }, horizontal: { offset: 0, slope: 0 } }
    expect(() => footCorrections(pose, fourFeet, target)).toThrow(OutOfRange)
    expect(() => rigidMove(moves(fourFeet, [[bad, 0]]))).toThrow(OutOfRange)
    expect(() => rigidMove(moves(feetOf([bad, 0], [0.5, 0]), []))).toThrow(OutOfRange)
  })
})

describe('reverse indicator (offsets in two planes)', () => {
  const planeAt = (x: number, { oz, oy, tv, th }: TruePose, standard = 0): OffsetPlane => ({
    x,
    offset: { vertical: { value: oz + tv * x, standard }, horizontal: { value: oy + th * x, standard } },
  })
  it('asks the same of every foot as face and rim do', () => {
    fc.assert(
      fc.property(truePose, double(-0.05, 0.05), double(0.1, 0.4), (truth, xS, c) => {
        const pose = poseFromTwoPlanes(planeAt(xS, truth), planeAt(xS + c, truth))
        const [byPlanes, byFace] = [pose, poseOf(truth)].map((p) => ok(footCorrections(p, fourFeet)).feet)
        byPlanes?.forEach((foot, i) => {
          expect(foot.vertical.value).toBeCloseTo(byFace?.[i]?.vertical.value ?? Number.NaN, 10)
          expect(foot.horizontal.value).toBeCloseTo(byFace?.[i]?.horizontal.value ?? Number.NaN, 10)
        })
      }),
    )
  })
  it('is as sure in its own planes as the readings, half the variance midway, and worse outside ([derived])', () => {
    const truth = { oz: 0, oy: 0, tv: 0, th: 0 }
    const { vertical } = poseFromTwoPlanes(planeAt(0.1, truth, 1e-5), planeAt(0.3, truth, 1e-5))
    expect(lineAt(vertical, 0.1).standard).toBeCloseTo(1e-5, 12)
    expect(lineAt(vertical, 0.3).standard).toBeCloseTo(1e-5, 12)
    expect(lineAt(vertical, 0.2).standard).toBeCloseTo(1e-5 * Math.SQRT1_2, 12)
    // A foot one spacing beyond the second plane: 2 a - s, so √5 times one reading.
    expect(lineAt(vertical, 0.5).standard).toBeCloseTo(1e-5 * Math.sqrt(5), 12)
  })
  it('needs two planes', () => {
    const plane = planeAt(0.1, { oz: 0, oy: 0, tv: 0, th: 0 })
    expect(() => poseFromTwoPlanes(plane, plane)).toThrow(OutOfRange)
    expect(() => poseFromTwoPlanes(plane, { ...plane, x: Number.NaN })).toThrow(OutOfRange)
  })
})

describe('what a move does', () => {
  it('fore feet up: the axis turns about the aft feet', () => {
    const move = ok(
      rigidMove(
        moves(fourFeet, [
          [0, 0],
          [0, 0],
          [1 * mm, 0],
          [1 * mm, 0],
        ]),
      ),
    )
    expect(move.vertical.slope.value).toBeCloseTo(1 / 380, 12)
    expect(lineAt(move.vertical, 0.18).value).toBeCloseTo(0, 12)
    expect(move.roll?.value).toBeCloseTo(0, 12)
    for (const foot of move.misfit) expect(foot.vertical).toBeCloseTo(0, 12)
  })
  it('starboard feet up: the machine rolls, starboard side up, and the axis rises by half', () => {
    const move = ok(
      rigidMove(
        moves(fourFeet, [
          [0, 0],
          [1 * mm, 0],
          [0, 0],
          [1 * mm, 0],
        ]),
      ),
    )
    expect(move.roll?.value).toBeCloseTo(1 / 280, 12)
    expect(move.vertical.offset.value).toBeCloseTo(0.5 * mm, 12)
    expect(move.vertical.slope.value).toBeCloseTo(0, 12)
  })
  it('one foot of four alone up by 1 mm: nothing rigid follows that; every foot is out by a quarter of it', () => {
    const { misfit } = ok(rigidMove(moves(fourFeet, [[1 * mm, 0]])))
    expect(misfit.map((foot) => foot.vertical)).toEqual(
      [0.25, -0.25, -0.25, 0.25].map((v) => expect.closeTo(v * mm, 12)),
    )
    expect(misfit.map((foot) => foot.name)).toEqual(fourFeet.map((foot) => foot.name))
  })
  it('sideways: slope and offset in the horizontal alone', () => {
    const move = ok(
      rigidMove(
        moves(fourFeet, [
          [0, -0.1 * mm],
          [0, -0.1 * mm],
          [0, 0.28 * mm],
          [0, 0.28 * mm],
        ]),
      ),
    )
    expect(move.horizontal.slope.value).toBeCloseTo(1e-3, 12)
    expect(move.horizontal.offset.value).toBeCloseTo(-0.28 * mm, 12)
    expect(move.vertical.slope.value).toBeCloseTo(0, 12)
  })
  it('readings that follow are those of the moved machine', () => {
    fc.assert(
      fc.property(
        truePose,
        fc.array(double(-1e-3, 1e-3), { minLength: 4, maxLength: 4 }),
        (truth, [aft = 0, fore = 0, aftY = 0, foreY = 0]) => {
          const by = [
            [aft, aftY],
            [aft, aftY],
            [fore, foreY],
            [fore, foreY],
          ] as const
          const { gaps, rims } = read(truth)
          const move = ok(rigidMove(moves(fourFeet, by)))
          // The axis of the moved machine: a straight line through both stations, each lifted by what its
          // feet were.
          const through = (a: number, b: number) => ({ t: (b - a) / 0.38, o: a - ((b - a) / 0.38) * 0.18 })
          const [v, h] = [through(aft, fore), through(aftY, foreY)]
          const now = { oz: truth.oz + v.o, oy: truth.oy + h.o, tv: truth.tv + v.t, th: truth.th + h.t }
          const after = read(now)
          expect(movedFace(gaps, move).slope.vertical.value).toBeCloseTo(after.gaps.slope.vertical.value, 11)
          expect(movedRim(rims, move).offset.horizontal.value).toBeCloseTo(
            after.rims.offset.horizontal.value,
            11,
          )
          expect(rimAt(movedRim(rims, move), 2).value).toBeCloseTo(rimAt(after.rims, 2).value, 11)
          expect(gapVariation(movedFace(gaps, move)).value).toBeCloseTo(gapVariation(after.gaps).value, 11)
        },
      ),
    )
  })
  it('is as uncertain as the nuts: two stations of two feet each, u/√2 a station', () => {
    const u = 1e-5
    const nuts = moves(fourFeet, []).map((m) => ({ ...m, vertical: { value: 0, standard: u } }))
    const move = ok(rigidMove(nuts))
    expect(move.vertical.slope.standard).toBeCloseTo(u / 0.38, 12)
    expect(lineAt(move.vertical, 0.18).standard).toBeCloseTo(u / Math.SQRT2, 12)
    expect(move.roll?.standard).toBeCloseTo(u / 0.28, 12)
    const { gaps, rims } = read({ oz: 0, oy: 0, tv: 1e-3, th: 0 })
    const predicted = movedFace(gaps, move)
    expect(predicted.slope.vertical.standard).toBeCloseTo(
      Math.hypot(gaps.slope.vertical.standard, u / 0.38),
      12,
    )
    expect(gapVariation(predicted).standard).toBeCloseTo(2 * radius * predicted.slope.vertical.standard, 12)
    expect(gapAt(predicted, 90 * deg).standard).toBeCloseTo(gapAt(gaps, 90 * deg).standard, 12)
    expect(gapAt(predicted, 0).standard).toBeGreaterThan(gapAt(gaps, 0).standard)
    expect(rimAt(movedRim(rims, move), 0).standard).toBeGreaterThan(rimAt(rims, 0).standard)
  })
  it('feet in one line fore and aft leave the roll open and the rest known', () => {
    const move = ok(
      rigidMove(
        moves(feetOf([0.18, 0], [0.56, 0]), [
          [0, 0],
          [0.38 * mm, 0],
        ]),
      ),
    )
    expect(move.vertical.slope.value).toBeCloseTo(1e-3, 12)
    expect(move).not.toHaveProperty('roll')
  })
  it('feet in one oblique line are a problem: slope cannot be told from roll', () => {
    const oblique = feetOf([0.18, -0.14], [0.56, 0.14])
    expect(
      problem(
        rigidMove(
          moves(oblique, [
            [0, 0],
            [1 * mm, 0],
          ]),
        ),
      ),
    ).toEqual({ type: 'feet-in-line', feet: ['foot 1', 'foot 2'] })
  })
  it('is refused for numbers that are none', () => {
    const bad = { ...moves(fourFeet, [])[0], vertical: { value: 0, standard: Number.NaN } }
    expect(() =>
      rigidMove([...moves(fourFeet, []), { name: 'x', x: 0, y: 0, horizontal: exactly(0), ...bad }]),
    ).toThrow(OutOfRange)
    expect(() => lineAt({ offset: exactly(0), slope: exactly(0), covariance: 0 }, Number.NaN)).toThrow(
      OutOfRange,
    )
  })
})
