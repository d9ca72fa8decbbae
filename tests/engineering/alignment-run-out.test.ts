import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { gapVariation } from '../../server/src/engineering/alignment/gap-variation.ts'
import { faceWithoutRunOut, rimWithoutRunOut } from '../../server/src/engineering/alignment/run-out.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'
import { deg, face, gapOf, mm, rim, round } from './alignment-helpers.ts'

const radius = 55 * mm
const double = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const pose = fc.record({
  oz: double(-0.5e-3, 0.5e-3),
  oy: double(-0.5e-3, 0.5e-3),
  tv: double(-5e-3, 5e-3),
  th: double(-5e-3, 5e-3),
})
const wobble = fc.record({ size: double(0, 0.4e-3), towards: double(-7, 7) })
/** Places read in either position need not be the same. */
const places = fc
  .record({ n: fc.integer({ min: 3, max: 9 }), from: double(0, 7) })
  .map(({ n, from }) => Array.from({ length: n }, (_, i) => from + (i * 2 * Math.PI) / n))

describe('flange run-out (US Army TM 55-1905-220-14, line shafting: what turns with the flange is run-out)', () => {
  it('of any size and direction cancels from slope and offset, and its own size is found', () => {
    fc.assert(
      fc.property(pose, wobble, places, places, (p, w, first, second) => {
        // What turns with the flange stands half a turn on in the second position.
        const turning = (a: number, turned: number) => (w.size / 2) * Math.cos(a - w.towards - turned)
        const gaps = (angles: readonly number[], turned: number) =>
          face(
            angles.map((angle) => ({
              angle,
              value: gapOf({ ...p, oz: 0, oy: 0 }, 2 * mm, radius, angle) + turning(angle, turned),
            })),
            radius,
          )
        const { mean, runOut } = faceWithoutRunOut(gaps(first, 0), gaps(second, Math.PI))
        expect(mean.slope.vertical.value).toBeCloseTo(p.tv, 11)
        expect(mean.slope.horizontal.value).toBeCloseTo(p.th, 11)
        expect(runOut.value).toBeCloseTo(w.size, 11)
        const rims = (angles: readonly number[], turned: number) =>
          rim(
            angles.map((angle) => ({
              angle,
              value: p.oz * Math.cos(angle) + p.oy * Math.sin(angle) + turning(angle, turned),
            })),
          )
        const off = rimWithoutRunOut(rims(first, 0), rims(second, Math.PI))
        expect(off.mean.offset.vertical.value).toBeCloseTo(p.oz, 12)
        expect(off.mean.offset.horizontal.value).toBeCloseTo(p.oy, 12)
        expect(off.runOut.value).toBeCloseTo(w.size, 11)
      }),
    )
  })
  it('of nothing leaves the face as either position shows it, no surer than one of them', () => {
    const one = face(round([1.92, 1.8, 1.66, 1.78], mm), radius)
    const { mean, runOut } = faceWithoutRunOut(one, one)
    expect(mean.slope).toEqual(one.slope)
    expect(gapVariation(mean)).toEqual(gapVariation(one))
    expect(runOut.value).toBe(0)
    expect(runOut.standard).toBeGreaterThan(0)
  })
  it('the run-out errs as half the difference of two independent readings does (JCGM 100 5.1.2)', () => {
    const gaugeStep = 0.02 * mm
    const a = face(round([2.1, 2, 1.9, 2], mm), radius, gaugeStep)
    const b = face(round([2, 2, 2, 2], mm), radius, gaugeStep)
    // D u(slope) / √2, and u(slope) = √2 (step / √12) / D.
    expect(faceWithoutRunOut(a, b).runOut.standard).toBeCloseTo(gaugeStep / Math.sqrt(12), 12)
  })
  it('of nothing errs as in the direction that was read worst', () => {
    // All four places lie within 30° of top and bottom, so the slope sideways is the less sure one.
    const read = [0, 30, 180, 210].map((a) => ({ angle: a * deg, value: 2 * mm }))
    const one = face(read, radius)
    const [up, across] = [one.slope.vertical.standard, one.slope.horizontal.standard]
    expect(across).toBeGreaterThan(1.1 * up)
    // Half the difference of two as sure as this one, on the diameter (JCGM 100 5.1.2).
    expect(faceWithoutRunOut(one, one).runOut.standard).toBeCloseTo((2 * radius * across) / Math.SQRT2, 12)
  })
  it('is explained by the gauge where both positions are', () => {
    const good = face(round([2, 2, 2, 2], mm), radius)
    // Top + bottom is 0.4 mm more than port + starboard: no gauge of 0.02 mm reads that of two planes.
    const bad = face(round([2.2, 2, 2.2, 2], mm), radius)
    expect(faceWithoutRunOut(good, good).mean.gaugeExplains).toBe(true)
    expect(faceWithoutRunOut(good, bad).mean.gaugeExplains).toBe(false)
    expect(faceWithoutRunOut(bad, good).mean.gaugeExplains).toBe(false)
  })
  it('faces read on different radii are refused', () => {
    const gaps = round([2, 2, 2, 2], mm)
    expect(() => faceWithoutRunOut(face(gaps, 0.05), face(gaps, 0.06))).toThrow(OutOfRange)
  })
  it('is seen by no closure test, which is why it is read for: both positions close', () => {
    const swung = [0, 90, 180, 270].map((a) => ({
      angle: a * deg,
      value: (2 + 0.1 * Math.cos(a * deg)) * mm,
    }))
    expect(face(swung, radius).gaugeExplains).toBe(true)
  })
})
