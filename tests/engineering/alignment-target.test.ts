import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { footCorrections, type Target } from '../../server/src/engineering/alignment/feet.ts'
import { poseFromFace } from '../../server/src/engineering/alignment/pose.ts'
import {
  againstTarget,
  shaftEndTarget,
  sumOfTargets,
  targetBefore,
  targetCold,
} from '../../server/src/engineering/alignment/target.ts'
import { faceAndRimFromTwoPlanes, rimAtFace } from '../../server/src/engineering/alignment/two-planes.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'
import { face, feetOf, gapOf, mm, ok, problem, rim, round } from './alignment-helpers.ts'

const radius = 55 * mm
const double = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const line = fc.record({ offset: double(-1e-3, 1e-3), slope: double(-3e-3, 3e-3) })
const target: fc.Arbitrary<Target> = fc.record({ vertical: line, horizontal: line })
const angles = Array.from({ length: 4 }, (_, i) => (i * Math.PI) / 2)
const feet = feetOf([0.18, -0.14], [0.18, 0.14], [0.56, -0.14], [0.56, 0.14])

/** Face and rim as a machine standing so would be read. */
function standing({ vertical, horizontal }: Target) {
  const p = { oz: 0, oy: 0, tv: vertical.slope, th: horizontal.slope }
  const f = face(
    angles.map((angle) => ({ angle, value: gapOf(p, 2 * mm, radius, angle) })),
    radius,
  )
  const r = rimStanding({ vertical, horizontal }, 0)
  return { face: f, rim: r, pose: poseFromFace(f, r) }
}

const rimStanding = ({ vertical, horizontal }: Target, x: number) =>
  rim(
    angles.map((angle) => ({
      angle,
      value:
        (vertical.offset + vertical.slope * x) * Math.cos(angle) +
        (horizontal.offset + horizontal.slope * x) * Math.sin(angle),
    })),
  )

const movesOf = (pose: ReturnType<typeof standing>['pose'], aim?: Target) =>
  ok(footCorrections(pose, feet, aim)).feet.flatMap((f) => [f.vertical.value, f.horizontal.value])

const near = (values: readonly number[]) => values.map((v) => expect.closeTo(v, 11))

const mirrored = (t: Target): Target => ({
  vertical: t.vertical,
  horizontal: { offset: -t.horizontal.offset, slope: -t.horizontal.slope },
})

describe('the target', () => {
  it('a machine that stands on it has nothing to move, and no gap variation against it', () => {
    fc.assert(
      fc.property(target, (t) => {
        const left = againstTarget(standing(t), t)
        expect(movesOf(left.pose)).toEqual(near(Array(8).fill(0)))
        expect(left.face.slope.vertical.value).toBeCloseTo(0, 11)
        expect(left.rim?.offset.horizontal.value).toBeCloseTo(0, 11)
      }),
    )
  })
  it('taken off first, it asks for the moves that the correction formula with starred values gives', () => {
    fc.assert(
      fc.property(target, target, (stand, aim) => {
        const read = standing(stand)
        expect(movesOf(againstTarget(read, aim).pose)).toEqual(near(movesOf(read.pose, aim)))
      }),
    )
  })
  it('seen in a mirror, port for starboard, only the sideways moves change sign', () => {
    fc.assert(
      fc.property(target, target, (stand, aim) => {
        const one = movesOf(againstTarget(standing(stand), aim).pose)
        const other = movesOf(againstTarget(standing(mirrored(stand)), mirrored(aim)).pose)
        expect(other).toEqual(near(one.map((v, i) => (i % 2 === 0 ? v : -v))))
      }),
    )
  })
  it('adds up from its parts, in any order; what moves of itself is aimed off the other way', () => {
    fc.assert(
      fc.property(target, target, (a, b) => {
        expect(sumOfTargets([a, b])).toEqual(sumOfTargets([b, a]))
        const sum = sumOfTargets([a, targetBefore(a)])
        expect([sum.vertical.offset, sum.horizontal.slope]).toEqual(near([0, 0]))
      }),
    )
    expect(sumOfTargets([])).toEqual({
      vertical: { offset: 0, slope: 0 },
      horizontal: { offset: 0, slope: 0 },
    })
  })
  it('an unknown offset stays unknown: the target moves the slope alone', () => {
    const { face: f } = standing(shaftEndTarget({ droop: 0, slope: 0 }))
    const left = againstTarget(
      { face: f, pose: poseFromFace(f, 'unknown') },
      shaftEndTarget({ droop: 1e-4, slope: 3e-4 }),
    )
    expect(left.rim).toBeUndefined()
    expect(left.pose.vertical.offset).toEqual({ value: 0, standard: 0 })
    expect(left.pose.vertical.slope.value).toBeCloseTo(-3e-4, 11)
  })
})

describe('its parts', () => {
  // US Army TM 55-1905-222-14 (flange position and slope with bolts out); droop 0.3579 mm and slope 0.8891 mrad are the worked case of a
  // 40 mm shaft, 1.5 m between bearings, 0.45 m overhang, by superposition of the public beam tables.
  it('a drooping shaft end leaves the gap wider at the bottom by slope x diameter, the machine flange high by the droop', () => {
    const t = shaftEndTarget({ droop: 0.3579 * mm, slope: 0.8891e-3 })
    const gap = (a: number) => gapOf({ oz: 0, oy: 0, tv: t.vertical.slope, th: 0 }, 2 * mm, radius, a)
    expect(gap(Math.PI) - gap(0)).toBeCloseTo(0.8891e-3 * 2 * radius, 12)
    expect(t.vertical.offset).toBeCloseTo(0.3579 * mm, 12)
  })
  // Common practice, no source: a machine that grows is set low by its growth when cold.
  it('feet that grow alike ask for the cold machine to stand that much low, level', () => {
    const t = ok(targetCold(feet.map((foot) => ({ ...foot, growth: 0.1 * mm }))))
    expect(t.vertical.offset).toBeCloseTo(-0.1 * mm, 12)
    expect(t.vertical.slope).toBeCloseTo(0, 12)
    expect(t.horizontal).toEqual({ offset: 0, slope: 0 })
  })
  it('every foot of a cold machine on its target stands low by its own growth', () => {
    fc.assert(
      fc.property(double(-1e-3, 1e-3), double(-1e-3, 1e-3), (aft, fwd) => {
        const t = ok(targetCold(feet.map((foot) => ({ ...foot, growth: foot.x < 0.3 ? aft : fwd }))))
        expect(t.vertical.offset + t.vertical.slope * 0.18).toBeCloseTo(-aft, 11)
        expect(t.vertical.offset + t.vertical.slope * 0.56).toBeCloseTo(-fwd, 11)
      }),
    )
  })
  it('feet at one station cannot say how the axis rises', () => {
    const two = feetOf([0.18, -0.14], [0.18, 0.14]).map((foot) => ({ ...foot, growth: 1e-4 }))
    expect(problem(targetCold(two)).type).toBe('feet-at-one-station')
  })
  it.each([
    ['droop NaN', () => shaftEndTarget({ droop: Number.NaN, slope: 0 })],
    ['droop huge', () => shaftEndTarget({ droop: 1, slope: 0 })],
    ['slope huge', () => shaftEndTarget({ droop: 0, slope: 1 })],
    ['growth infinite', () => targetCold(feet.map((f) => ({ ...f, growth: Number.POSITIVE_INFINITY })))],
    [
      'sum',
      () =>
        sumOfTargets([{ vertical: { offset: Number.NaN, slope: 0 }, horizontal: { offset: 0, slope: 0 } }]),
    ],
  ])('%s is refused', (_, bad) => {
    expect(bad).toThrow(OutOfRange)
  })
})

describe('rims in other planes', () => {
  it('reverse indicator gives the same moves as face and rim on the same machine', () => {
    fc.assert(
      fc.property(target, double(-0.3, 0.05), double(0.06, 0.4), (stand, s, a) => {
        const {
          pose,
          face: f,
          rim: r,
        } = faceAndRimFromTwoPlanes(
          [
            { x: s, rim: rimStanding(stand, s) },
            { x: a, rim: rimStanding(stand, a) },
          ],
          radius,
        )
        const byFace = standing(stand)
        for (const [i, move] of movesOf(pose).entries())
          expect(Math.abs(move - (movesOf(byFace.pose)[i] ?? Number.NaN))).toBeLessThan(1e-10)
        expect(Math.abs(f.slope.vertical.value - stand.vertical.slope)).toBeLessThan(1e-10)
        expect(Math.abs(r.offset.horizontal.value - stand.horizontal.offset)).toBeLessThan(1e-10)
        // The covariances are those of the lines: variances agree on the way through either.
        expect(Math.sqrt(f.covariance[1]?.[1] ?? 0)).toBeCloseTo(pose.vertical.slope.standard, 12)
        expect(Math.sqrt(r.covariance[2]?.[2] ?? 0)).toBeCloseTo(pose.horizontal.offset.standard, 12)
      }),
    )
  })
  it('the order of the planes does not matter', () => {
    const stand = standing({ vertical: { offset: 1e-4, slope: 1e-3 }, horizontal: { offset: 0, slope: 0 } })
    const [S, A] = [
      { x: 0, rim: stand.rim },
      { x: 0.2, rim: rim(round([0.3, 0, -0.3, 0], mm)) },
    ]
    const [one, two] = [faceAndRimFromTwoPlanes([S, A], radius), faceAndRimFromTwoPlanes([A, S], radius)]
    expect(movesOf(one.pose)).toEqual(near(movesOf(two.pose)))
  })
  it('a rim read forward of the face is carried back along the slope, and its errors with it', () => {
    fc.assert(
      fc.property(target, double(-0.3, 0.3), (stand, x) => {
        const read = standing(stand)
        const away = rimStanding(stand, x)
        const pose = poseFromFace(read.face, away, { rimAt: x })
        expect(pose.vertical.offset.value).toBeCloseTo(stand.vertical.offset, 11)
        const carried = rimAtFace({ x, rim: away }, read.face)
        expect(carried.offset.vertical.value).toBeCloseTo(pose.vertical.offset.value, 12)
        expect(carried.offset.vertical.standard).toBeCloseTo(pose.vertical.offset.standard, 12)
        expect(Math.sqrt(carried.covariance[1]?.[1] ?? 0)).toBeCloseTo(pose.vertical.offset.standard, 12)
      }),
    )
  })
})

it('an offset of the target is left aside where a pilot holds the flanges together: they cannot part', () => {
  const slope = { vertical: { offset: 0, slope: 1e-3 }, horizontal: { offset: 0, slope: -0.4e-3 } }
  const aim = {
    vertical: { ...slope.vertical, offset: 0.3e-3 },
    horizontal: { ...slope.horizontal, offset: -0.2e-3 },
  }
  const straight = standing({ vertical: { offset: 0, slope: 0 }, horizontal: { offset: 0, slope: 0 } })
  // By similar triangles: slope times the distance from the coupling, and nothing else.
  expect(movesOf(poseFromFace(straight.face, 'pilot'), aim)).toEqual(
    near(feet.flatMap(({ x }) => [1e-3 * x, -0.4e-3 * x])),
  )
})
