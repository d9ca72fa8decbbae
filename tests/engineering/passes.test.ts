// The order of the work, by a little simulation of its own: a rigid body on its lower nuts lies on the plane through three of them that no other
// stands above, with the centre of gravity inside the three. Statics, derived here without the functions that are tested.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { byStation } from '../../server/src/engineering/alignment/feet.ts'
import { type Lift, packChanges, passesOf } from '../../server/src/engineering/alignment/passes.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'

type Point = { readonly x: number; readonly y: number; readonly z: number }
type Plane = {
  readonly at: (x: number, y: number) => number
  /** Slope along the shaft. */
  readonly along: number
  readonly angle: number
  readonly on: readonly number[]
}

const tiny = 1e-8

function plane(a: Point, b: Point, c: Point): Omit<Plane, 'on'> | undefined {
  const [ux, uy, uz] = [b.x - a.x, b.y - a.y, b.z - a.z]
  const [vx, vy, vz] = [c.x - a.x, c.y - a.y, c.z - a.z]
  const area = ux * vy - uy * vx
  if (Math.abs(area) < 1e-7) return undefined
  const [p, q] = [(uz * vy - uy * vz) / area, (ux * vz - uz * vx) / area]
  return { at: (x, y) => a.z + p * (x - a.x) + q * (y - a.y), along: p, angle: Math.hypot(p, q) }
}

function inside(p: { x: number; y: number }, [a, b, c]: readonly [Point, Point, Point]): boolean {
  const turn = (u: Point, v: Point) => (v.x - u.x) * (p.y - u.y) - (v.y - u.y) * (p.x - u.x)
  const turns = [turn(a, b), turn(b, c), turn(c, a)]
  return turns.every((t) => t >= -1e-12) || turns.every((t) => t <= 1e-12)
}

/** How a body with this centre of gravity can lie on the nuts; several ways where it is on an edge. */
function lying(nuts: readonly Point[], gravity: { x: number; y: number }): readonly Plane[] {
  const ways: Plane[] = []
  for (const [i, a] of nuts.entries())
    for (const [j, b] of nuts.entries())
      for (const [k, c] of nuts.entries()) {
        if (!(i < j && j < k) || !inside(gravity, [a, b, c])) continue
        const found = plane(a, b, c)
        if (!found || !nuts.every(({ x, y, z }) => z <= found.at(x, y) + tiny)) continue
        const on = nuts.flatMap(({ x, y, z }, n) => (z >= found.at(x, y) - tiny ? [n] : []))
        ways.push({ ...found, on })
      }
  return ways
}

const pitch = fc.constantFrom(0.001, 0.0015, 0.00175, 0.002, 0.0025, 0.003, 0.0254 / 10)

const share = fc.double({ min: 0.4, max: 2, noNaN: true })

/** Machines of 2 to 5 stations; ends go by whole steps, what is between to the step nearest the line. */
const machines = fc
  .record({
    from: fc.double({ min: -1.2, max: 0.5, noNaN: true }),
    gaps: fc.array(fc.double({ min: 0.05, max: 0.6, noNaN: true }), { minLength: 1, maxLength: 4 }),
    half: fc.double({ min: 0.15, max: 0.4, noNaN: true }),
    // Stations of other widths, so that a side slants.
    widths: fc.array(fc.tuple(share, share), { minLength: 5, maxLength: 5 }),
    single: fc.constantFrom(-1, -1, 0, 1, 2),
    pitch,
    parts: fc.constantFrom(1, 2, 4),
    ends: fc.tuple(fc.integer({ min: -60, max: 60 }), fc.integer({ min: -60, max: 60 })),
    only: fc.constantFrom('both', 'both', 'aft', 'fore', 'neither'),
    gravity: fc.tuple(
      fc.double({ min: 0.12, max: 0.88, noNaN: true }),
      // Of the narrowest half of a station: beyond it the machine would tip.
      fc.double({ min: -0.75, max: 0.75, noNaN: true }),
    ),
  })
  .map(({ from, gaps, half, widths, single, pitch, parts, ends, only, gravity: [along, across] }) => {
    const xs = [from, ...gaps.map((_, i) => gaps.slice(0, i + 1).reduce((sum, gap) => sum + gap, from))]
    const step = pitch / 6 / parts
    const [aft, fore] = [
      only === 'both' || only === 'aft' ? ends[0] : 0,
      only === 'both' || only === 'fore' ? ends[1] : 0,
    ]
    const [first = 0, last = 0] = [xs[0], xs.at(-1)]
    const shareAt = (x: number) => (x - first) / (last - first)
    const line = (x: number) => (aft + shareAt(x) * (fore - aft)) * step
    const lifts = xs.flatMap((x, i): Lift[] => {
      const by = Math.round(line(x) / step) * step
      const [port = 0, starboard = 0] = widths[i]?.map((of) => of * half) ?? []
      return i === single
        ? [{ x, y: 0, by }]
        : [
            { x, y: -port, by },
            { x, y: starboard, by },
          ]
    })
    const odd = xs.some((_, i) => i === single)
    const narrowest = half * Math.min(...widths.slice(0, xs.length).flat())
    return {
      lifts,
      xs,
      line,
      step,
      flat: pitch / 6,
      gravity: { x: first + along * (last - first), y: odd ? 0 : across * narrowest },
    }
  })

type Machine = typeof machines extends fc.Arbitrary<infer M> ? M : never

const edge = 0.016
const passesFor = ({ lifts, step, flat }: Machine) =>
  passesOf(lifts, { step, most: 2 * flat, uneven: flat, edge })

describe('passes', () => {
  it('end exactly where the plan wants each foot, by visits of two flats at most', () => {
    fc.assert(
      fc.property(machines, (machine) => {
        const { passes } = passesFor(machine)
        const sum = machine.lifts.map(() => 0)
        for (const { feet, by } of passes.flat()) {
          expect(Math.abs(by)).toBeLessThanOrEqual(2 * machine.flat + tiny)
          expect(Math.abs(by / machine.step - Math.round(by / machine.step))).toBeLessThan(1e-5)
          for (const i of feet) sum[i] = (sum[i] ?? 0) + by
        }
        for (const [i, { by }] of machine.lifts.entries()) expect(sum[i]).toBeCloseTo(by, 9)
      }),
    )
  })

  it('keep the machine on three nuts or more, off its middle stations, and every foot within its slack', () => {
    fc.assert(
      fc.property(machines, (machine) => {
        const { lifts, xs, gravity, step, flat, line } = machine
        const { passes, clearance, tilt } = passesFor(machine)
        const nuts = lifts.map(({ x, y }) => ({ x, y, z: 0 }))
        const [aft, fore] = [nuts.filter(({ x }) => x === xs[0]), nuts.filter(({ x }) => x === xs.at(-1))]
        const length = (xs.at(-1) ?? 0) - (xs[0] ?? 0)
        const ends = () => ((fore[0]?.z ?? 0) - (aft[0]?.z ?? 0)) / length
        // What the heights that were asked for leave: half a step at most.
        const proud = Math.max(0, ...lifts.map(({ x, by }) => by - line(x)))
        expect(proud).toBeLessThanOrEqual(step / 2 + tiny)
        for (const [k, visits] of passes.entries()) {
          for (const { feet, by } of visits) {
            // One foot after the other, a flat at most at a time.
            for (let left = Math.abs(by); left > tiny; left -= flat)
              for (const i of feet) {
                const nut = nuts[i]
                if (nut) nut.z += Math.sign(by) * Math.min(flat, left)
                const ways = lying(nuts, gravity)
                expect(ways.length).toBeGreaterThan(0)
                for (const way of ways)
                  for (const [f, { x, y }] of lifts.entries())
                    expect(way.at(x, y) + edge * way.angle).toBeLessThanOrEqual((clearance[f] ?? 0) + tiny)
              }
            for (const { x, z } of nuts) {
              const share = (x - (xs[0] ?? 0)) / length
              const between = (aft[0]?.z ?? 0) * (1 - share) + (fore[0]?.z ?? 0) * share
              expect(z - between).toBeLessThanOrEqual(proud + tiny)
            }
            if (proud < tiny)
              for (const { on } of lying(nuts, gravity))
                for (const end of [aft, fore])
                  expect(on.some((n) => nuts[n] && end.includes(nuts[n]))).toBe(true)
            for (const { along } of lying(nuts, gravity))
              expect(Math.abs(along)).toBeLessThanOrEqual(tilt + tiny)
            // Against the straight way: 2 mrad to the nearest step, or one step, and the rounding of both ends.
            const whole = (line(xs.at(-1) ?? 0) - line(xs[0] ?? 0)) / length
            const way = [k, k + 1].map((n) => (whole * n) / passes.length)
            const off = Math.max(ends() - Math.max(...way), Math.min(...way) - ends())
            expect(off).toBeLessThanOrEqual(
              Math.max(2e-3 + step / 2 / length, step / length) + step / length + tiny,
            )
          }
        }
      }),
    )
  })

  const two = (aft: number, fore: number): readonly Lift[] => [
    { x: 0.18, y: -0.14, by: aft },
    { x: 0.18, y: 0.14, by: aft },
    { x: 0.56, y: -0.14, by: fore },
    { x: 0.56, y: 0.14, by: fore },
  ]
  const m16 = { step: 0.002 / 12, most: 0.002 / 3, uneven: 0.002 / 6, edge: 0.016 }
  const flats = (by: number) => Math.round((by / 0.002) * 12) / 2

  it('raise the end that is furthest from the coupling first, lower the other last', () => {
    const order = (aft: number, fore: number) =>
      passesOf(two(aft, fore), m16).passes.map((visits) =>
        visits.map(({ feet, by }) => [feet[0] === 0 ? 'aft' : 'fore', flats(by)]),
      )
    expect(order(0.001 / 3, 0.0035 / 3)).toEqual([
      [
        ['fore', 2],
        ['aft', 0.5],
      ],
      [
        ['fore', 1.5],
        ['aft', 0.5],
      ],
    ])
    expect(order(0.001 / 3, -0.001 / 3)).toEqual([
      [
        ['aft', 1],
        ['fore', -1],
      ],
    ])
    expect(order(-0.001 / 3, 0)).toEqual([[['aft', -1]]])
    expect(order(0, 0)).toEqual([])
  })

  it('behind the coupling faces, the furthest end is the aft one', () => {
    const behind = two(0.0003333333, 0.0003333333).map((foot) => ({ ...foot, x: foot.x - 1 }))
    expect(passesOf(behind, m16).passes[0]?.[0]?.feet).toEqual([0, 1])
  })

  it('ask for the slack that the geometry needs', () => {
    // Fore end up 1.1667 mm over 380 mm, aft 0.3333: at most 1.1667 mm up, and before the aft end follows (1.1667 - 0.1667) / 380 = 2.63 mrad.
    // One foot a flat above the other, 280 mm apart: 1.19 mrad, a flat more at the other side, as the stations are alike.
    const { clearance, tilt } = passesOf(two(0.001 / 3, 0.0035 / 3), m16)
    expect(tilt).toBeCloseTo(0.001 / 0.38, 9)
    const roll = 0.002 / 6 / 0.28
    expect(clearance[2]).toBeCloseTo(0.0035 / 3 + 0.002 / 6 + 0.016 * Math.hypot(0.001 / 0.38, roll), 9)
    expect(clearance[0]).toBeCloseTo(0.001 / 3 + 0.002 / 6 + 0.016 * Math.hypot(0.001 / 0.38, roll), 9)
  })

  it('lift nothing where only a station between goes down: the machine lies on its ends all the while', () => {
    const lifts = [0, -0.002, 0].map((by, i) => ({ x: 0.2 + 0.2 * i, y: 0, by }))
    const { clearance, tilt } = passesOf(lifts, { ...m16, uneven: 0 })
    expect(tilt).toBe(0)
    expect(clearance).toEqual([0, 0, 0])
  })

  // 2 mrad over 400 mm are 0.8 mm at an end, and 1.6 mm are two such visits, wherever the machine stands.
  it.each([0.2, 2.2])('are no more than the tilt asks for: feet from %d m on', (x) => {
    const lifts = [x, x + 0.4].map((at) => ({ x: at, y: 0, by: 0.0016 }))
    const { passes } = passesOf(lifts, { step: 1e-4, most: 0.002, uneven: 0, edge: 0 })
    expect(passes.map((visits) => visits.map(({ by }) => by))).toEqual(
      [1, 2].map(() => [expect.closeTo(0.0008, 9), expect.closeTo(0.0008, 9)]),
    )
  })

  const station = (half: number, x: number, by: number) => [-half, half].map((y) => ({ x, y, by }))
  const flat = 0.002 / 6

  it('roll by the narrowest station, and by no more than the largest visit', () => {
    // A flat across 0.2 m is 1.67 mrad, over the 1 m of the wide end 1.67 mm; the wide end goes up a flat itself.
    const narrow = passesOf([...station(0.1, 0.2, -flat), ...station(0.5, 0.6, flat)], {
      step: flat,
      most: 2 * flat,
      uneven: flat,
      edge: 0,
    })
    expect(narrow.clearance[2]).toBeGreaterThanOrEqual(flat * (1 + 1 / 0.2) - tiny)
    // Stations alike, half a flat in all: half a flat up, and as much from the roll.
    const half = passesOf([...station(0.14, 0.2, 0), ...station(0.14, 0.6, flat / 2)], {
      step: flat / 2,
      most: 2 * flat,
      uneven: flat,
      edge: 0,
    })
    expect(half.clearance[2]).toBeCloseTo(flat, 9)
  })

  it('leave room where a side slants from one station to the next', () => {
    const [port, starboard, by] = [
      [-0.15, -0.4, -0.2],
      [0.2, 0.15, 0.15],
      [0, 0, -flat],
    ]
    const lifts = [0.2, 0.4, 0.6].flatMap((x, i) =>
      [port[i] ?? 0, starboard[i] ?? 0].map((y) => ({ x, y, by: by[i] ?? 0 })),
    )
    const { passes, clearance } = passesOf(lifts, { step: flat, most: 2 * flat, uneven: flat, edge: 0 })
    const nuts = lifts.map(({ x, y }) => ({ x, y, z: 0 }))
    for (const { feet, by: down } of passes.flat())
      for (const i of feet) {
        const nut = nuts[i]
        if (nut) nut.z += down
        for (const way of lying(nuts, { x: 0.55, y: -0.012 }))
          for (const [f, { x, y }] of lifts.entries())
            expect(way.at(x, y)).toBeLessThanOrEqual((clearance[f] ?? 0) + tiny)
      }
  })

  it('hold at coarse steps, great moves and three feet, and refuse what is no machine', () => {
    // Half a millimetre a step is coarser than a visit.
    const coarse = passesOf(two(0.001, 0.002), { ...m16, step: 0.0005, most: 0.0004 })
    expect(coarse.passes.flat().every(({ by }) => Math.abs(by) <= 0.0005 + tiny)).toBe(true)
    const huge = passesOf(two(-0.09, 0.09), m16)
    expect(huge.passes.flat().reduce((sum, { feet, by }) => sum + (feet[0] === 0 ? by : 0), 0)).toBeCloseTo(
      -0.09,
      9,
    )
    expect(passesOf(two(0, 0.001).slice(1), m16).passes[0]?.[0]?.feet).toEqual([1, 2])
    expect(() => passesOf(two(0, 0.2), m16)).toThrow(OutOfRange)
    expect(() => passesOf(two(0, 0).slice(2), m16)).toThrow(OutOfRange)
    expect(() => passesOf(two(0, Number.NaN), m16)).toThrow(OutOfRange)
  })
})

describe('packs', () => {
  it('are changed once at each station, none between ever above the line of the ends', () => {
    fc.assert(
      fc.property(machines, ({ lifts, xs, line, step }) => {
        const { visits, clearance } = packChanges(lifts, { gap: 0.001, step: 1e-6, edge })
        const stations = byStation(lifts)
        const heights = stations.map(() => 0)
        const seen: number[] = []
        for (const { feet, by, lift } of visits) {
          const s = stations.findIndex((station) => station.feet[0] === feet[0])
          seen.push(s)
          expect(lift).toBeGreaterThanOrEqual(Math.max(0, by) + 0.001 - tiny)
          expect(lift).toBeLessThan(Math.max(0, by) + 0.001 + 1.1e-6)
          for (const i of feet) expect(clearance[i]).toBeGreaterThanOrEqual(lift)
          heights[s] = by
          for (const [m, h] of heights.entries()) {
            const share = ((xs[m] ?? 0) - (xs[0] ?? 0)) / ((xs.at(-1) ?? 0) - (xs[0] ?? 0))
            const between = (heights[0] ?? 0) * (1 - share) + (heights.at(-1) ?? 0) * share
            const proud = Math.max(0, ...lifts.map(({ x, by: up }) => up - line(x)))
            expect(proud).toBeLessThanOrEqual(step)
            expect(h - between).toBeLessThanOrEqual(proud + tiny)
          }
        }
        expect(new Set(seen).size).toBe(seen.length)
        expect(seen.length).toBe(
          stations.filter((_, s) => Math.abs(lifts[stations[s]?.feet[0] ?? 0]?.by ?? 0) > tiny).length,
        )
      }),
    )
  })

  it('leave room for the end that is lifted, and for what lies between', () => {
    const lifts = [0.2, 0.4, 0.6].map((x, i) => ({ x, y: 0, by: [0, 0.001, 0.002][i] ?? 0 }))
    const { visits, clearance, tilt } = packChanges(lifts, { gap: 0.001, step: 5e-4, edge: 0 })
    expect(visits.map(({ feet, lift }) => [feet[0], lift])).toEqual([
      [2, expect.closeTo(0.003, 9)],
      [1, expect.closeTo(0.002, 9)],
    ])
    // The fore end lifted by 3 mm over 400 mm takes the middle up by half of it; to lift the middle by 2 mm from the fore end takes 4 mm there.
    expect(clearance[1]).toBeCloseTo(0.002, 9)
    expect(clearance[2]).toBeCloseTo(0.004, 9)
    expect(tilt).toBeCloseTo(0.01, 9)
  })
})
