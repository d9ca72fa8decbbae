import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { normalAngle } from '../../server/src/engineering/alignment/angles.ts'
import { type Closure, closure, maxPlaces } from '../../server/src/engineering/alignment/closure.ts'
import { gather, type Place, type Reading } from '../../server/src/engineering/alignment/readings.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'
import { deg, face, mm, round } from './alignment-helpers.ts'

const step = 0.02 * mm
const close = (readings: readonly Reading[], gaugeStep = step): Closure =>
  closure(gather(readings, gaugeStep))

describe('closure of four gaps: T + B = S + S (Bloch & Geitner), within two gauge steps', () => {
  it.each([
    [[1.92, 1.8, 1.66, 1.78], 'closed', 0],
    [[1.92, 1.8, 1.66, 1.8], 'closed', 0.02],
    [[1.92, 1.8, 1.66, 1.82], 'closed', 0.04],
    [[1.92, 1.8, 1.66, 1.84], 'open', 0.06],
    [[1.92, 1.7, 1.66, 1.78], 'open', 0.1],
  ] as const)('%j is %s, off by %d mm', (gaps, state, off) => {
    const found = close(round(gaps, mm))
    expect(found).toMatchObject({ state, allowed: expect.closeTo(2 * step, 12) })
    expect(found.state === 'untestable' ? Number.NaN : found.difference).toBeCloseTo(off * mm, 12)
  })
  it('with four readings the odd one cannot be told', () => {
    const found = close(round([1.92, 1.7, 1.66, 1.78], mm))
    expect(found).toMatchObject({ state: 'open', suspects: [0, 1, 2, 3] })
    expect(found).not.toHaveProperty('odd')
  })
  it('three readings cannot be tested', () => {
    expect(close([0, 120, 240].map((a) => ({ angle: a * deg, value: a * mm })))).toEqual({
      state: 'untestable',
    })
    expect(close([])).toEqual({ state: 'untestable' })
  })
})

const anglesApart = fc
  .array(fc.integer({ min: 0, max: 35 }), { minLength: 5, maxLength: 10 })
  .map((tens) => [...new Set(tens)].map((t) => t * 10 * deg))
const plane = fc.record({
  g0: fc.double({ min: 1e-3, max: 5e-3, noNaN: true }),
  p: fc.double({ min: -1e-3, max: 1e-3, noNaN: true }),
  q: fc.double({ min: -1e-3, max: 1e-3, noNaN: true }),
})
const at = ({ g0, p, q }: { g0: number; p: number; q: number }, a: number) =>
  g0 + p * Math.cos(a) + q * Math.sin(a)

describe('closure of more readings', () => {
  it.each([
    [[0, 90, 180, 270], true],
    [[10, 60, 190, 240], true],
    [[0, 72, 144, 216, 288], false],
    [[0, 90, 180, 300], false],
  ] as const)('at %j: the difference is that of opposite pairs: %s', (angles, opposite) => {
    const found = close(angles.map((a, i) => ({ angle: a * deg, value: (i % 2 === 0 ? 1.9 : 1.6) * mm })))
    expect(found).toMatchObject({ state: 'open', opposite })
  })
  it('never blames readings of a true plane for having been rounded to the gauge', () => {
    fc.assert(
      fc.property(anglesApart, plane, (angles, truth) => {
        const readings = angles.map((angle) => ({ angle, value: Math.round(at(truth, angle) / step) * step }))
        expect(['closed', 'untestable']).toContain(close(readings).state)
      }),
    )
  })
  it('names it by its angle, where another place was read twice', () => {
    const angles = [0, 0, 60, 120, 180, 240, 300]
    const found = close(angles.map((a) => ({ angle: a * deg, value: (a === 240 ? 2.3 : 2) * mm })))
    expect(found).toMatchObject({ state: 'open', odd: expect.closeTo(240 * deg, 9) })
  })
  it('names the odd reading among eight at 45 degrees, whichever it is and however the set is turned', () => {
    fc.assert(
      fc.property(
        plane,
        fc.nat(7),
        fc.constantFrom(-1, 1),
        fc.double({ min: 0, max: 6, noNaN: true }),
        (truth, odd, sign, turn) => {
          const readings = Array.from({ length: 8 }, (_, i) => {
            const angle = i * 45 * deg + turn
            const read = Math.round(at(truth, angle) / step) * step
            return { angle, value: read + (i === odd ? sign * 10 * step : 0) }
          })
          expect(close(readings)).toMatchObject({
            state: 'open',
            odd: expect.closeTo(normalAngle(readings[odd]?.angle ?? Number.NaN), 9),
            suspects: [odd],
          })
        },
      ),
    )
  })
  it('with five readings names the one that is off by far', () => {
    const truth = { g0: 2e-3, p: 1e-4, q: -5e-5 }
    const angles = [0, 72, 144, 216, 288].map((a) => a * deg)
    angles.forEach((_, odd) => {
      const readings = angles.map((angle, i) => ({ angle, value: at(truth, angle) + (i === odd ? 3e-4 : 0) }))
      expect(close(readings)).toMatchObject({
        state: 'open',
        odd: expect.closeTo(normalAngle(readings[odd]?.angle ?? Number.NaN), 9),
      })
    })
  })
  it('names nobody when two readings are wrong', () => {
    const wrong = Array.from({ length: 8 }, (_, i) => ({
      angle: i * 45 * deg,
      value: 2e-3 + (i === 1 || i === 4 ? 3e-4 : 0),
    }))
    const found = close(wrong)
    expect(found).toMatchObject({ state: 'open', suspects: [] })
    expect(found).not.toHaveProperty('odd')
  })
  it('is what the fit goes by when it says whether a finer gauge would help', () => {
    expect(face(round([1.92, 1.8, 1.66, 1.82], mm), 55 * mm).gaugeExplains).toBe(true)
    expect(face(round([1.92, 1.8, 1.66, 1.84], mm), 55 * mm).gaugeExplains).toBe(false)
  })
  it('refuses more places than it can try', () => {
    const many = Array.from({ length: maxPlaces + 1 }, (_, i) => ({ angle: i * 5 * deg, value: 1e-3 }))
    expect(() => close(many)).toThrow(OutOfRange)
  })
})

/** Every four of the places, tried one after the other: how far off they are, in what the gauge explains, and their indexes. The definition of
 * closure itself, by determinants of the rows [1, cos, sin]. */
function everyFour(places: readonly Place[]) {
  const n = places.length
  const at = (i: number): Place => places[i] ?? { angle: 0, value: 0, standard: 0, fromGauge: true }
  const sine = (i: number, j: number) => Math.sin((at(j).angle - at(i).angle) / 2)
  const triple = (i: number, j: number, k: number) => sine(i, j) * sine(j, k) * sine(i, k)
  const fours: { of: readonly number[]; difference: number; allowed: number; share: number }[] = []
  for (let a = 0; a < n; a++)
    for (let b = a + 1; b < n; b++)
      for (let c = b + 1; c < n; c++)
        for (let d = c + 1; d < n; d++) {
          const of = [a, b, c, d]
          const weights = [triple(b, c, d), -triple(a, c, d), triple(a, b, d), -triple(a, b, c)]
          const sum = (each: (weight: number, i: number) => number) =>
            weights.reduce((total, weight, i) => total + each(weight, of[i] ?? 0), 0)
          const scale = 4 / sum(Math.abs)
          const difference = scale * Math.abs(sum((w, i) => w * at(i).value))
          const allowed = scale * Math.sqrt(3) * sum((w, i) => Math.abs(w) * at(i).standard)
          fours.push({ of, difference, allowed, share: difference / allowed })
        }
  return fours
}

/** A twelfth of a turn apart, so that many fours agree equally little; anywhere; or two of them a few thousandths of a degree apart. */
const anywhere = fc.oneof(
  fc
    .uniqueArray(fc.nat(11), { minLength: 4, maxLength: 12 })
    .map((hours) => hours.map((hour) => hour * 30 * deg)),
  fc.array(fc.double({ min: 0, max: 6.28, noNaN: true }), { minLength: 4, maxLength: 10 }),
  fc
    .tuple(
      fc.uniqueArray(fc.nat(35), { minLength: 3, maxLength: 9 }),
      fc.double({ min: 1e-5, max: 1e-4, noNaN: true }),
    )
    .map(([tens, near]) => [(tens[0] ?? 0) * 10 * deg + near, ...tens.map((ten) => ten * 10 * deg)]),
)
/** On the plane, off by whole steps, and off by anything; some read twice. */
const offBy = fc.oneof(
  fc.constant(0),
  fc.integer({ min: -4, max: 4 }).map((steps) => steps * step),
  fc.double({ min: -1e-4, max: 1e-4, noNaN: true }),
)
const manyRead = fc
  .tuple(anywhere, plane, fc.infiniteStream(offBy), fc.infiniteStream(fc.integer({ min: 1, max: 2 })))
  .map(([angles, truth, off, times]) =>
    angles.flatMap((angle) =>
      Array.from({ length: times.next().value ?? 1 }, () => ({
        angle,
        value: at(truth, angle) + (off.next().value ?? 0),
      })),
    ),
  )

describe('the four that agree least', () => {
  it('are those that are found when every four is tried, and so are the places that could be the odd one', () => {
    fc.assert(
      fc.property(manyRead, (readings) => {
        const places = gather(readings, step)
        const found = closure(places)
        const fours = everyFour(places)
        expect(found.state === 'untestable').toBe(fours.length === 0)
        if (found.state === 'untestable') return
        const most = Math.max(...fours.map(({ share }) => share))
        const bare = 1e-7 * (1 + most)
        // Which of those that agree equally little is said is left open.
        const equal = fours.filter(({ share }) => share > most - bare)
        expect(found.difference / found.allowed).toBeCloseTo(most, 6)
        const { difference, allowed } = found
        expect(
          equal.some(
            (four) =>
              Math.abs(four.difference - difference) < 1e-7 * step &&
              Math.abs(four.allowed - allowed) < 1e-7 * step,
          ),
        ).toBe(true)
        const failing = fours.filter(({ share }) => share > 1 + 1e-6)
        // On the limit, rounding says which.
        if (fours.some(({ share }) => Math.abs(share - 1 - 1e-6) < bare)) return
        expect(found.state).toBe(failing.length > 0 ? 'open' : 'closed')
        if (found.state === 'open')
          expect(found.suspects).toEqual(
            places.map((_, i) => i).filter((i) => failing.every(({ of }) => of.includes(i))),
          )
      }),
      { numRuns: 500 },
    )
  })
})
