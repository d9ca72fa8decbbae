// Heights of nuts and shims, and moves of machines on shims and of more than two stations, against trying everything.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  between,
  type Heights,
  shimHeights,
  stepHeights,
} from '../../server/src/engineering/adjuster-heights.ts'
import {
  comesInside,
  movesInside,
  type SearchProblem,
  searchMoves,
} from '../../server/src/engineering/alignment/move-search.ts'

const mm = 1e-3
const mrad = 1e-3

/** A length or slope; less than a tenth of a micrometre is none. */
const double = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((x) => (Math.abs(x) < 1e-7 ? 0 : x))

/** All the moves from `low` to `high`. */
function listed(heights: Heights, low: number, high: number): readonly number[] {
  const all: number[] = []
  for (let at = heights.from(low); at !== undefined && at <= high + 1e-9; at = heights.from(at + 3e-9))
    all.push(at)
  return all
}
const tenths = (heights: readonly number[]) => heights.map((h) => Math.round(h * 1e4))

describe('heights', () => {
  it('of a nut are whole steps within the travel left', () => {
    expect(listed(stepHeights(0.001, { up: 0.002, down: 0 }), -1, 1)).toEqual([0, 0.001, 0.002])
    expect(stepHeights(0.001).from(0.0101)).toBe(0.011)
    expect(stepHeights(0.001).upTo(0.0101)).toBe(0.01)
    expect(stepHeights(0.001, { up: 0.002, down: 0.001 }).from(0.0025)).toBeUndefined()
    expect(stepHeights(0.001, { up: 0.002, down: 0.001 }).upTo(-0.0015)).toBeUndefined()
  })

  it('of shims are the packs that can be made', () => {
    const packs = shimHeights([2e-4, 5e-4])
    expect(tenths(listed(packs(), -1, 1))).toEqual([0, 2, 4, 5, 6, 7, 8, 9, 10, 11, 12, 14, 15, 17, 20])
    expect(tenths(listed(packs(7e-4), -1, 0))).toEqual([-7, -5, -3, -2, -1, 0])
  })

  it('are the same from below and from above', () => {
    const stock = fc.uniqueArray(fc.integer({ min: 10, max: 20_000 }), { minLength: 1, maxLength: 6 })
    fc.assert(
      fc.property(stock, fc.integer({ min: 0, max: 90_000 }), fc.boolean(), (units, at, anew) => {
        const heights = shimHeights(units.map((unit) => unit * 1e-7))(anew ? 3e-3 : 0)
        const height = (at - 30_000) * 1e-7
        const [up, down] = [heights.from(height), heights.upTo(height)]
        if (up !== undefined) {
          expect(up).toBeGreaterThanOrEqual(height - 1e-9)
          expect(heights.upTo(up)).toBe(up)
        }
        if (down !== undefined) {
          expect(down).toBeLessThanOrEqual(height + 1e-9)
          expect(heights.from(down)).toBe(down)
        }
        // Nothing lies in between.
        if (up !== undefined && down !== undefined && up - down > 1e-8)
          expect(heights.from(down + 3e-9)).toBe(up)
      }),
    )
  })
})

/** Every pair of end heights listed one by one, the stations between at the highest height on the line of the ends or within the stray under it, the
 * machine's axis as the straight line through the ends. Follows the order of the plan: docs/engineering/alignment.md. */
function everyPair(
  stations: readonly { readonly x: number; readonly heights: readonly number[] }[],
  of: {
    readonly error: SearchProblem['error']
    readonly limit: SearchProblem['limit']
    readonly goal: number
    readonly stray: number
    readonly sideways: boolean
  },
) {
  const { error, limit, goal, stray } = of
  const xs = stations.map(({ x }) => x)
  const [aft, fore] = [xs[0] ?? 0, xs.at(-1) ?? 0]
  const results: { used: number; away: number; touched: number }[] = []
  for (const a of stations[0]?.heights ?? [])
    for (const f of stations.at(-1)?.heights ?? []) {
      const heights = stations.map(({ x, heights: own }, s) => {
        if (s === 0) return a
        if (s === stations.length - 1) return f
        const line = a + ((f - a) * (x - aft)) / (fore - aft)
        return own.filter((h) => h <= line + 1e-9 && line - h <= stray + 1e-9).sort((p, q) => q - p)[0]
      })
      if (heights.some((h) => h === undefined)) continue
      const set = heights.map((h) => h ?? 0)
      const slope = (f - a) / (fore - aft)
      const upright = {
        offset: error.vertical.offset + a - slope * aft,
        slope: error.vertical.slope + slope,
      }
      for (const slide of of.sideways ? [false, true] : [false]) {
        const across = slide ? { offset: 0, slope: 0 } : error.horizontal
        const [o, s] = [
          Math.hypot(upright.offset, across.offset) / limit.offset,
          Math.hypot(upright.slope, across.slope) / limit.slope,
        ]
        const slid = (x: number) =>
          slide && Math.abs(error.horizontal.offset + error.horizontal.slope * x) > 1e-9
        const touched = 2 * set.filter((h, i) => Math.abs(h) > 1e-9 || slid(xs[i] ?? 0)).length
        results.push({ used: Math.max(o, s), away: Math.hypot(o, s), touched })
      }
    }
  const good = results.filter(({ used }) => used <= goal)
  const fewest = Math.min(...good.map(({ touched }) => touched))
  return {
    touched: fewest,
    used: Math.min(
      ...(good.length > 0 ? good.filter(({ touched }) => touched === fewest) : results).map(
        ({ used }) => used,
      ),
    ),
    away: Math.min(...results.map(({ away }) => away)),
    good: good.length > 0,
    any: results.length > 0,
  }
}

describe('shims, and stations between', () => {
  const units = fc.uniqueArray(fc.integer({ min: 200, max: 8000 }), { minLength: 1, maxLength: 3 })
  const machine = fc.record({
    xs: fc.uniqueArray(fc.integer({ min: 1, max: 12 }), { minLength: 2, maxLength: 4 }),
    stock: units,
    packs: fc.array(fc.integer({ min: 0, max: 30_000 }), { minLength: 4, maxLength: 4 }),
    known: fc.boolean(),
    error: fc.record({
      vertical: fc.record({ offset: double(-0.6 * mm, 0.6 * mm), slope: double(-2 * mrad, 2 * mrad) }),
      horizontal: fc.record({ offset: double(-0.2 * mm, 0.2 * mm), slope: double(-1 * mrad, 1 * mrad) }),
    }),
    limit: fc.record({ offset: double(0.05 * mm, 1 * mm), slope: double(0.3 * mrad, 4 * mrad) }),
    goal: double(0.1, 0.7),
    stray: fc.constantFrom(0.02 * mm, 0.05 * mm, 0.2 * mm),
    sideways: fc.boolean(),
    still: fc.boolean(),
  })

  it('are never worse than trying everything', () => {
    fc.assert(
      fc.property(machine, (m) => {
        const xs = m.xs.toSorted((a, b) => a - b).map((x) => x / 10)
        const packs = shimHeights(m.stock.map((unit) => unit * 1e-7))
        const stations = xs.map((x, s) => {
          const heights = m.known ? packs((m.packs[s] ?? 0) * 1e-7) : packs()
          return { x, heights: m.still && s === 1 && xs.length > 2 ? between(heights, 0, 0) : heights }
        })
        const feet = stations.flatMap((station, s) =>
          [-0.1, 0.1].map((y) => ({ name: `${s} ${y}`, y, ...station, ...(!m.sideways && { sideways: 0 }) })),
        )
        const problem = { ...m, feet }
        // Without room sideways the search tries slides of nothing only.
        const all = everyPair(
          stations.map(({ x, heights }) => ({ x, heights: listed(heights, -1, 1) })),
          m,
        )
        const outcome = searchMoves(problem)
        expect(comesInside(problem)).toBe(all.used <= 1)
        if (!outcome.ok) {
          expect(outcome.problem.type).toBe('no-heights')
          expect(all.any).toBe(false)
          return
        }
        const best = outcome.value
        expect(best.sure).toBe(true)
        if (all.good) {
          expect(best.touched).toBe(all.touched)
          expect(best.used).toBeCloseTo(all.used, 6)
        } else if (all.used <= 1) expect(best.used).toBeCloseTo(all.used, 6)
        else {
          const { vertical, horizontal } = best.left
          const away = Math.hypot(
            Math.hypot(vertical.offset, horizontal.offset) / m.limit.offset,
            Math.hypot(vertical.slope, horizontal.slope) / m.limit.slope,
          )
          expect(away).toBeCloseTo(all.away, 5)
        }
      }),
      { numRuns: 400 },
    )
  })
})

describe('a machine with more ways to set its feet than can be tried', () => {
  // Five stations, packs that are known, forty uneven thicknesses: some 10^10 pairs of ends, few of which those between can follow.
  const stock = Array.from({ length: 40 }, (_, i) => (13 + i * 21 + i * i * 3) * 1e-6)
  const heights = shimHeights(stock)(3.3 * mm)
  const feet = [0.2, 0.29, 0.4, 0.47, 0.6].flatMap((x) =>
    [-0.1, 0.1].map((y) => ({ name: `${x} ${y}`, x, y, heights })),
  )
  const problem = {
    feet,
    error: {
      vertical: { offset: 0.5 * mm, slope: 2 * mrad },
      horizontal: { offset: 0.3 * mm, slope: 1 * mrad },
    },
    limit: { offset: 0.15 * mm, slope: 1 * mrad },
    goal: 0.5,
    stray: 0.0005 * mm,
  }

  it('is given good moves, which it does not call the best', () => {
    const tries = { left: 200 }
    const outcome = searchMoves({ ...problem, tries })
    expect(outcome).toMatchObject({ ok: true, value: { sure: false } })
    expect(outcome.ok && outcome.value.used).toBeLessThan(0.2)
    // Broken off where the tries were spent.
    expect(tries.left).toBeGreaterThan(-10)
  })

  it('gets what is found of the tries that are left, and nothing from none', () => {
    const tries = { left: 200 }
    expect(movesInside({ ...problem, tries })?.sure).toBe(false)
    expect(movesInside({ ...problem, tries })).toBeUndefined()
    expect(comesInside({ ...problem, tries })).toBe(false)
    expect(comesInside(problem)).toBe(true)
  })
})
