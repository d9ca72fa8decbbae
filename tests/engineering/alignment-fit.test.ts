import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fitFace } from '../../server/src/engineering/alignment/face.ts'
import { gapVariation } from '../../server/src/engineering/alignment/gap-variation.ts'
import type { Reading } from '../../server/src/engineering/alignment/readings.ts'
import { fitRim } from '../../server/src/engineering/alignment/rim.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'
import { rectangular } from '../../server/src/quantity/uncertainty.ts'
import { deg, face, gapAt, gapOf, mm, ok, problem, rim, rimAt, rimOf, round } from './alignment-helpers.ts'

const radius = 55 * mm
const gaugeStep = 0.02 * mm

const double = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const truePose = fc.record({
  oz: double(-0.5e-3, 0.5e-3),
  oy: double(-0.5e-3, 0.5e-3),
  tv: double(-5e-3, 5e-3),
  th: double(-5e-3, 5e-3),
})
/** Three to ten angles: an even division of the turn, each shifted by up to a fifth of its share, the whole
 * turned. */
const validAngles = fc
  .record({ shifts: fc.array(double(-0.2, 0.2), { minLength: 3, maxLength: 10 }), turn: double(0, 7) })
  .map(({ shifts, turn }) => shifts.map((shift, i) => turn + ((i + shift) * 2 * Math.PI) / shifts.length))
const gapReadings = fc.array(double(1.5e-3, 2.5e-3), { minLength: 4, maxLength: 4 }).map((v) => round(v))

const slopes = (readings: readonly Reading[], r = radius, step = gaugeStep) => {
  const { slope } = face(readings, r, step)
  return [slope.vertical.value, slope.horizontal.value] as const
}
const offsets = (readings: readonly Reading[]) => {
  const { offset } = rim(readings)
  return [offset.vertical.value, offset.horizontal.value] as const
}

describe('fit against solid geometry', () => {
  it('finds any true slope from noise-free gaps at any valid angles', () => {
    fc.assert(
      fc.property(truePose, validAngles, double(0.03, 0.2), (pose, angles, r) => {
        const centred = { ...pose, oz: 0, oy: 0 }
        const fit = face(
          angles.map((angle) => ({ angle, value: gapOf(centred, 2 * mm, r, angle) })),
          r,
        )
        expect(fit.slope.vertical.value).toBeCloseTo(pose.tv, 11)
        expect(fit.slope.horizontal.value).toBeCloseTo(pose.th, 11)
        expect(fit.gap.value).toBeCloseTo(2 * mm, 11)
        for (const residual of fit.residuals) expect(residual).toBeCloseTo(0, 11)
      }),
    )
  })
  it('slope does not depend on offset: an offset only shifts all gaps alike (gaps are differenced)', () => {
    fc.assert(
      fc.property(truePose, validAngles, (pose, angles) => {
        const fit = face(
          angles.map((angle) => ({ angle, value: gapOf(pose, 2 * mm, radius, angle) })),
          radius,
        )
        expect(fit.slope.vertical.value).toBeCloseTo(pose.tv, 11)
        expect(fit.slope.horizontal.value).toBeCloseTo(pose.th, 11)
      }),
    )
  })
  it('finds any true offset from the steps between two exact circles', () => {
    fc.assert(
      fc.property(truePose, validAngles, double(-0.2e-3, 0.2e-3), (pose, angles, step) => {
        const R = 60 * mm
        const fit = rim(angles.map((angle) => ({ angle, value: rimOf(pose, R, step, angle) })))
        // Two circles differ from the first-order formula by up to o²/2R, 4 µm here at the very worst, more
        // where angles crowd.
        const secondOrder = (4 * (pose.oz ** 2 + pose.oy ** 2)) / R
        expect(Math.abs(fit.offset.vertical.value - pose.oz)).toBeLessThan(secondOrder + 1e-12)
        expect(Math.abs(fit.offset.horizontal.value - pose.oy)).toBeLessThan(secondOrder + 1e-12)
      }),
    )
  })
  it('gapAt and rimAt give back the readings of three angles', () => {
    const angles = [20, 130, 250].map((a) => a * deg)
    const readings = angles.map((angle, i) => ({ angle, value: (2 + 0.1 * i) * mm }))
    for (const { angle, value } of readings) {
      expect(gapAt(face(readings, radius), angle).value).toBeCloseTo(value, 12)
      expect(rimAt(rim(readings), angle).value).toBeCloseTo(value, 12)
      // Three readings, three unknowns: the fit is as uncertain there as the reading itself.
      expect(gapAt(face(readings, radius), angle).standard).toBeCloseTo(rectangular(gaugeStep), 12)
    }
  })
})

describe('laws', () => {
  it('seen in a mirror, port for starboard, only the horizontal changes sign', () => {
    fc.assert(
      fc.property(gapReadings, (readings) => {
        const mirrored = readings.map(({ angle, value }) => ({ angle: -angle, value }))
        const [tv, th] = slopes(readings)
        const [mv, mh] = slopes(mirrored)
        expect([mv, mh]).toEqual([expect.closeTo(tv, 11), expect.closeTo(-th, 11)])
        const [oz, oy] = offsets(readings)
        expect(offsets(mirrored)).toEqual([expect.closeTo(oz, 12), expect.closeTo(-oy, 12)])
      }),
    )
  })
  it('turning the whole set of angles turns the slope vector with it and keeps the gap variation', () => {
    fc.assert(
      fc.property(gapReadings, double(-7, 7), (readings, turn) => {
        const turned = readings.map(({ angle, value }) => ({ angle: angle + turn, value }))
        const [tv, th] = slopes(readings)
        expect(slopes(turned)).toEqual([
          expect.closeTo(tv * Math.cos(turn) - th * Math.sin(turn), 11),
          expect.closeTo(tv * Math.sin(turn) + th * Math.cos(turn), 11),
        ])
        const [before, after] = [readings, turned].map((r) => gapVariation(face(r, radius)))
        expect(after?.value).toBeCloseTo(before?.value ?? Number.NaN, 11)
        expect(after?.standard).toBeCloseTo(before?.standard ?? Number.NaN, 11)
      }),
    )
  })
  it('scaling gaps, radius and gauge together leaves the slope and its uncertainty', () => {
    fc.assert(
      fc.property(gapReadings, double(0.1, 10), (readings, k) => {
        const scaled = readings.map(({ angle, value }) => ({ angle, value: k * value }))
        const [a, b] = [face(readings, radius), face(scaled, k * radius, k * gaugeStep)]
        expect(b.slope.vertical.value).toBeCloseTo(a.slope.vertical.value, 11)
        expect(b.slope.vertical.standard).toBeCloseTo(a.slope.vertical.standard, 11)
        expect(b.slope.horizontal.standard).toBeCloseTo(a.slope.horizontal.standard, 11)
      }),
    )
  })
  it('swapping the readings of opposite angles reverses slope and offset', () => {
    fc.assert(
      fc.property(gapReadings, (readings) => {
        const swapped = readings.map(({ angle, value }) => ({ angle: angle + Math.PI, value }))
        expect(slopes(swapped)).toEqual(slopes(readings).map((v) => expect.closeTo(-v, 11)))
        expect(offsets(swapped)).toEqual(offsets(readings).map((v) => expect.closeTo(-v, 12)))
      }),
    )
  })
  it('the order of the readings and the mean gap do not matter', () => {
    fc.assert(
      fc.property(gapReadings, double(-1e-3, 1e-3), (readings, more) => {
        const other = [...readings].reverse().map(({ angle, value }) => ({ angle, value: value + more }))
        expect(slopes(other)).toEqual(slopes(readings).map((v) => expect.closeTo(v, 11)))
      }),
    )
  })
})

describe('uncertainty', () => {
  it('of four gaps: slope is a difference of two rectangular errors over D (JCGM 100 F.2.2.1)', () => {
    const { slope } = face(round([1.92, 1.8, 1.66, 1.78], mm), radius)
    expect(slope.vertical.standard).toBeCloseTo((Math.SQRT2 * rectangular(gaugeStep)) / (2 * radius), 11)
  })
  it('repeating a reading does not make the gauge finer: the same gap rounds the same way', () => {
    const once = round([1.92, 1.8, 1.66, 1.78], mm)
    expect(face([...once, ...once, ...once], radius).slope.vertical.standard).toBeCloseTo(
      face(once, radius).slope.vertical.standard,
      12,
    )
  })
  it('nor do angles beyond four ([derived]: rounding errors of crowded readings are not independent)', () => {
    const flat = (n: number) =>
      face(
        Array.from({ length: n }, (_, i) => ({ angle: (i * 360 * deg) / n, value: 2 * mm })),
        radius,
      )
    for (const n of [5, 8, 12])
      expect(flat(n).slope.vertical.standard).toBeCloseTo(flat(4).slope.vertical.standard, 12)
  })
  it('repeats that scatter beyond the gauge count with their pooled s / √n (JCGM 100 4.2)', () => {
    // Two readings each, ± 0.05 mm about means that close: s = 0.05 √2 mm pooled over four pairs, s/√2 = 0.05
    // mm for each mean.
    const means = [2.2, 2.1, 2, 2.1]
    const repeated = [
      ...round(
        means.map((m) => m + 0.05),
        mm,
      ),
      ...round(
        means.map((m) => m - 0.05),
        mm,
      ),
    ]
    const fit = face(repeated, radius)
    expect(fit.slope.vertical.standard).toBeCloseTo((Math.SQRT2 * 0.05 * mm) / (2 * radius), 11)
    expect(fit.gaugeExplains).toBe(false)
    expect(fit.slope.vertical.value).toBeCloseTo(-0.2 / 110, 11)
  })
  it('many angles that scatter beyond the gauge each count in full: rounding is not what limits them (JCGM 100 4.2)', () => {
    // Each of twelve means is known to twice the gauge; a slope is fitted to twelve of them: √(2/12) u / r.
    const mean = 2 * rectangular(gaugeStep)
    const twelve = Array.from({ length: 12 }, (_, i) => i * 30 * deg)
    const fit = face(
      [-mean, mean].flatMap((off) => twelve.map((angle) => ({ angle, value: 2 * mm + off }))),
      radius,
    )
    expect(fit.slope.vertical.standard).toBeCloseTo((Math.sqrt(2 / 12) * mean) / radius, 11)
  })
  it('an angle read more often weighs more when the repeats scatter', () => {
    // Top 2.0 read four times with scatter, one other reading each: the fit passes nearer to the top than
    // with equal weights.
    const others = [72, 144, 216, 288].map((a) => ({ angle: a * deg, value: 2.2 * mm }))
    const top = [1.9, 2.1, 1.9, 2.1].map((v) => ({ angle: 0, value: v * mm }))
    const often = gapAt(face([...top, ...others], radius), 0).value
    const once = gapAt(face([{ angle: 0, value: 2 * mm }, ...others], radius), 0).value
    expect(Math.abs(often - 2 * mm)).toBeLessThan(Math.abs(once - 2 * mm))
  })
  it('redundant readings that disagree beyond the gauge raise it: by the root of reduced chi-square (Birge ratio)', () => {
    const open = face(round([2, 2.12, 2, 2], mm), radius)
    // The closure error 0.12 mm spreads as ± 0.03 mm over four residuals, one degree of freedom: s = 0.06 mm.
    expect(open.residuals.map((r) => Math.round(r / (0.001 * mm)))).toEqual([-30, 30, -30, 30])
    expect(open.degreesOfFreedom).toBe(1)
    expect(Math.sqrt(open.reducedChiSquare ?? 0) * rectangular(gaugeStep)).toBeCloseTo(0.06 * mm, 12)
    expect(open.slope.vertical.standard).toBeCloseTo((Math.SQRT2 * 0.06 * mm) / (2 * radius), 11)
  })
  it('readings that agree better than the gauge do not lower it', () => {
    const good = face(round([2, 2, 2, 2], mm), radius)
    expect(good.reducedChiSquare).toBeCloseTo(0, 12)
    expect(good.gap.standard).toBeCloseTo(rectangular(gaugeStep) / 2, 12)
  })
  it('with three angles nothing is redundant', () => {
    const fit = face(
      [0, 120, 240].map((a) => ({ angle: a * deg, value: 2 * mm })),
      radius,
    )
    expect(fit.degreesOfFreedom).toBe(0)
    expect(fit).not.toHaveProperty('reducedChiSquare')
  })
})

describe('what cannot be fitted', () => {
  it('too few angles and half a turn come back as problems, for faces and rims', () => {
    const half = [0, 90, 180].map((a) => ({ angle: a * deg, value: 2 * mm }))
    expect(problem(fitFace(half, { radius, gaugeStep })).type).toBe('within-half-turn')
    expect(problem(fitRim(half.slice(1), { gaugeStep })).type).toBe('too-few-angles')
    expect(problem(fitFace([], { radius, gaugeStep })).type).toBe('too-few-angles')
  })
  it('a slope beyond small angles is a problem: a reading is wrong by far', () => {
    expect(problem(fitFace(round([17.8, 1.8, 1.6, 1.8], mm), { radius, gaugeStep }))).toMatchObject({
      type: 'slope-too-large',
      limit: 0.1,
    })
  })
  const gaps = round([2, 2, 2, 2], mm)
  it.each([
    ['radius NaN', () => fitFace(gaps, { radius: Number.NaN, gaugeStep })],
    ['radius zero', () => fitFace(gaps, { radius: 0, gaugeStep })],
    ['radius negative', () => fitFace(gaps, { radius: -0.05, gaugeStep })],
    ['radius tiny', () => fitFace(gaps, { radius: 1e-300, gaugeStep })],
    ['radius huge', () => fitFace(gaps, { radius: 1e300, gaugeStep })],
    ['gauge step NaN', () => fitFace(gaps, { radius, gaugeStep: Number.NaN })],
    ['gauge step zero', () => fitFace(gaps, { radius, gaugeStep: 0 })],
    ['gauge step negative', () => fitRim(gaps, { gaugeStep: -1e-5 })],
    ['gauge step huge', () => fitRim(gaps, { gaugeStep: 1 })],
    ['gauge step tiny', () => fitRim(gaps, { gaugeStep: 1e-300 })],
    ['reading NaN', () => fitRim([...gaps, { angle: 1, value: Number.NaN }], { gaugeStep })],
    [
      'reading infinite',
      () => fitRim([...gaps, { angle: 1, value: Number.POSITIVE_INFINITY }], { gaugeStep }),
    ],
    ['reading huge', () => fitRim([...gaps, { angle: 1, value: 1e300 }], { gaugeStep })],
    ['angle NaN', () => fitRim([...gaps, { angle: Number.NaN, value: 1e-3 }], { gaugeStep })],
  ])('%s is refused', (_, bad) => {
    expect(bad).toThrow(OutOfRange)
  })
  it('whatever is read, no NaN comes out', () => {
    const anyNumber = fc.oneof(fc.double(), fc.constantFrom(0, 1e-3, 1e-300, 1e300, 99, 1e-6, Math.PI))
    fc.assert(
      fc.property(
        fc.array(fc.record({ angle: anyNumber, value: anyNumber }), { maxLength: 6 }),
        anyNumber,
        anyNumber,
        (readings, r, step) => {
          try {
            const fit = fitFace(readings, { radius: r, gaugeStep: step })
            const out = fit.ok ? [fit.value.slope, fit.value.gap, gapVariation(fit.value)] : [fit.problem]
            expect(JSON.stringify(out)).not.toMatch(/null/) // NaN and infinity print as null
          } catch (error) {
            expect(error).toBeInstanceOf(OutOfRange)
          }
        },
      ),
    )
    expect(ok(fitFace(gaps, { radius, gaugeStep })).slope.vertical.value).toBeCloseTo(0, 12)
  })
})
