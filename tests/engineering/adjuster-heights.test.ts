// Heights looked up one by one are those of a list of all of them, made here from what the adjuster is: steps within the travel, sums of up to four shims.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  anyOf,
  between,
  type Heights,
  shimHeights,
  stepHeights,
} from '../../server/src/engineering/adjuster-heights.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'

const micro = 1e-6
/** What is asked for, in hundredths of a micrometre: on a height of the list, or well off it. */
const asked = fc.oneof(
  fc.integer({ min: -6000, max: 6000 }).map((um) => um * micro),
  fc.integer({ min: -600_000, max: 600_000 }).map((n) => (n * micro) / 100),
)

function expectListed(heights: Heights, list: readonly number[], height: number): void {
  const above = list.filter((one) => one >= height - 1e-10)
  const below = list.filter((one) => one <= height + 1e-10)
  const [from, upTo] = [heights.from(height), heights.upTo(height)]
  if (above.length === 0) expect(from).toBeUndefined()
  else expect(from).toBeCloseTo(Math.min(...above), 12)
  if (below.length === 0) expect(upTo).toBeUndefined()
  else expect(upTo).toBeCloseTo(Math.max(...below), 12)
}

const stepsOf = (step: number, up: number, down: number): number[] =>
  Array.from({ length: 2001 }, (_, i) => i - 1000)
    .filter((n) => n * step <= up && n * step >= -down)
    .map((n) => n * step * micro)

const step = fc.integer({ min: 10, max: 900 })
const travel = fc.integer({ min: 0, max: 3000 })

describe('heights in steps', () => {
  it('are those within the travel', () => {
    fc.assert(
      fc.property(step, travel, travel, asked, (by, up, down, height) => {
        const heights = stepHeights(by * micro, { up: up * micro, down: down * micro })
        expectListed(heights, stepsOf(by, up, down), height)
      }),
      { numRuns: 500 },
    )
  })

  it('reach the end of a travel of whole steps, though a sum in floating point is a hair short', () => {
    fc.assert(
      fc.property(step, fc.integer({ min: 1, max: 9 }), (by, n) => {
        const end = n * by * micro
        const heights = stepHeights(by * micro, { up: end * (1 - 1e-12), down: end * (1 - 1e-12) })
        expect(heights.from(end)).toBeCloseTo(end, 12)
        expect(heights.upTo(-end)).toBeCloseTo(-end, 12)
        expect(heights.from(end + by * micro * 0.1)).toBeUndefined()
        expect(heights.upTo(-end - by * micro * 0.1)).toBeUndefined()
      }),
    )
  })

  it('have no end that matters where no travel is stated', () => {
    expect(stepHeights(0.001).from(50)).toBeCloseTo(50, 9)
    expect(stepHeights(0.001).upTo(-50)).toBeCloseTo(-50, 9)
  })

  it.each([
    [0, {}],
    [0.2, {}],
    [Number.NaN, {}],
    [0.001, { up: -0.001 }],
    [0.001, { down: -0.001 }],
    [0.001, { up: 101 }],
    [0.001, { down: Number.NaN }],
  ])('of %s m in a travel of %o are refused', (by, range) => {
    expect(() => stepHeights(by, range)).toThrow(OutOfRange)
  })
})

describe('heights of packs', () => {
  const stock = fc.uniqueArray(fc.integer({ min: 50, max: 1000 }), { minLength: 1, maxLength: 4 })
  const sumsOf = (thicknesses: readonly number[]): number[] => {
    let sums = [0]
    for (let shim = 0; shim < 4; shim++)
      sums = [...new Set(sums.flatMap((sum) => [sum, ...thicknesses.map((one) => sum + one)]))]
    return sums
  }

  // At most four shims in a pack: Bachus & Custodio, Know and Understand Centrifugal Pumps.
  it('are sums of up to four shims, less the pack that is made anew', () => {
    fc.assert(
      fc.property(stock, fc.integer({ min: 0, max: 2000 }), asked, (thicknesses, present, height) => {
        const heights = shimHeights(thicknesses.map((one) => one * micro))(present * micro)
        const list = sumsOf(thicknesses).map((sum) => (sum - present) * micro)
        expectListed(heights, list, height)
      }),
      { numRuns: 300 },
    )
  })

  it('come on top of what is there where no pack is stated: nothing can be taken out', () => {
    const heights = shimHeights([0.0002])()
    expect(heights.upTo(-0.0001)).toBeUndefined()
    expect(heights.from(-0.0001)).toBe(0)
    expect(heights.from(0.0009)).toBeUndefined()
  })

  it.each([-0.001, 1.1, Number.NaN])('over a pack of %s m are refused', (present) => {
    expect(() => shimHeights([0.0002])(present)).toThrow(OutOfRange)
  })
})

describe('heights put together', () => {
  const own = fc.tuple(step, travel, travel)
  const heightsOf = ([by, up, down]: readonly [number, number, number]) =>
    stepHeights(by * micro, { up: up * micro, down: down * micro })

  it('of several adjusters are those of each', () => {
    fc.assert(
      fc.property(own, own, asked, (a, b, height) => {
        expectListed(anyOf([heightsOf(a), heightsOf(b)]), [...stepsOf(...a), ...stepsOf(...b)], height)
      }),
      { numRuns: 500 },
    )
    expect(anyOf([]).from(0)).toBeUndefined()
    expect(anyOf([]).upTo(0)).toBeUndefined()
  })

  it('between two bounds are those from one to the other, both included', () => {
    const bound = fc.integer({ min: -3000, max: 3000 })
    fc.assert(
      fc.property(own, bound, bound, asked, (a, one, other, height) => {
        const [low, high] = [Math.min(one, other), Math.max(one, other)]
        const list = stepsOf(...a).filter((at) => at >= low * micro - 1e-10 && at <= high * micro + 1e-10)
        expectListed(between(heightsOf(a), low * micro, high * micro), list, height)
      }),
      { numRuns: 500 },
    )
    const onSteps = between(stepHeights(0.001), -0.002, 0.003)
    expect(onSteps.from(0.003)).toBeCloseTo(0.003, 12)
    expect(onSteps.upTo(-0.002)).toBeCloseTo(-0.002, 12)
  })
})
