import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { nutMove, nutTravel } from '../../server/src/engineering/adjusters.ts'
import { shimPack } from '../../server/src/engineering/shim-packs.ts'
import { heightOf, parseThread, standardThreads } from '../../server/src/engineering/thread.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'
import { inch, mm, ok } from './alignment-helpers.ts'

const nutMoves = (correction: number, thread: Parameters<typeof nutMove>[1]) => ({
  wholeFlats: nutMove(correction, thread, 1),
  halfFlats: nutMove(correction, thread, 2),
})

const M16 = ok(parseThread('M16'))

describe('threads', () => {
  it.each([...standardThreads.metric, ...standardThreads.inch])('%s, offered as standard, is one', (name) => {
    expect(parseThread(name)).toMatchObject({ ok: true })
  })

  it.each([
    // ISO 261 / ISO 262 coarse pitches, mm; one flat is a sixth: the printed flats to 0.001 mm.
    ['M6', 1, 0.167],
    ['M8', 1.25, 0.208],
    ['M10', 1.5, 0.25],
    ['M12', 1.75, 0.292],
    ['M14', 2, 0.333],
    ['M16', 2, 0.333],
    ['M18', 2.5, 0.417],
    ['M20', 2.5, 0.417],
    ['M22', 2.5, 0.417],
    ['M24', 3, 0.5],
  ] as const)('%s has a pitch of %d mm, %d mm a flat (ISO 261, ISO 262)', (name, pitch, flat) => {
    const thread = ok(parseThread(name))
    expect(thread.pitch).toBeCloseTo(pitch * mm, 12)
    expect(nutTravel({ turns: 0, flats: 1 }, thread.pitch) / mm).toBeCloseTo(flat, 3)
  })
  it.each([
    // ISO 898-1 stress areas, mm²: At = pi/4 (d - 0.9382 p)², within 0.4 %.
    ['M6', 20.1],
    ['M8', 36.6],
    ['M10', 58],
    ['M12', 84.3],
    ['M14', 115],
    ['M16', 157],
    ['M18', 192],
    ['M20', 245],
    ['M22', 303],
    ['M24', 353],
  ] as const)('%s has a stress area of %d mm² (ISO 898-1)', (name, area) => {
    const { diameter, pitch } = ok(parseThread(name))
    expect(((Math.PI / 4) * ((diameter - 0.9382 * pitch) / mm) ** 2) / area).toBeCloseTo(1, 2)
  })
  it.each([
    // Public UNC/UNF dimension tables: threads per inch, stress area in² = pi/4 (d - 0.9743/n)².
    ['1/4 UNC', 20, 0.0318],
    ['5/16 UNC', 18, 0.0524],
    ['3/8 UNC', 16, 0.0775],
    ['7/16 UNC', 14, 0.1063],
    ['1/2 UNC', 13, 0.1419],
    ['9/16 UNC', 12, 0.182],
    ['5/8 UNC', 11, 0.226],
    ['3/4 UNC', 10, 0.334],
    ['7/8 UNC', 9, 0.462],
    ['1 UNC', 8, 0.606],
    ['1/4 UNF', 28, 0.0364],
    ['5/16 UNF', 24, 0.058],
    ['3/8 UNF', 24, 0.0878],
    ['7/16 UNF', 20, 0.1187],
    ['1/2 UNF', 20, 0.1599],
    ['9/16 UNF', 18, 0.203],
    ['5/8 UNF', 18, 0.256],
    ['3/4 UNF', 16, 0.373],
    ['7/8 UNF', 14, 0.509],
    ['1 UNF', 12, 0.663],
  ] as const)('%s has %d threads per inch and %d in² (public UNC/UNF tables)', (name, tpi, area) => {
    const { diameter, pitch } = ok(parseThread(name))
    expect(inch / pitch).toBeCloseTo(tpi, 9)
    expect(((Math.PI / 4) * (diameter / inch - 0.9743 / tpi) ** 2) / area).toBeCloseTo(1, 2)
  })
  it.each([
    ['M16x1.5', 16, 1.5, 'right'],
    ['m16 × 1.5', 16, 1.5, 'right'],
    ['M16x2', 16, 2, 'right'],
    ['M30x3.5', 30, 3.5, 'right'],
    ['M16 LH', 16, 2, 'left'],
    ['M16x1.5-LH', 16, 1.5, 'left'],
    ['3/4-10 UNC', 19.05, 2.54, 'right'],
    ['3/4-16 UNF', 19.05, 25.4 / 16, 'right'],
    ['3/4-16', 19.05, 25.4 / 16, 'right'],
    ['3/4 in UNC', 19.05, 2.54, 'right'],
    ['1-8 UNC', 25.4, 25.4 / 8, 'right'],
    ['1-8', 25.4, 25.4 / 8, 'right'],
    ['1-1/4-7', 31.75, 25.4 / 7, 'right'],
    ['1 1/4-7 UNC', 31.75, 25.4 / 7, 'right'],
    ['3/4-10 UNC LH', 19.05, 2.54, 'left'],
    // ASME B1.1: class of fit behind the series, and LH behind that.
    ['3/4-16 UNF-2A', 19.05, 25.4 / 16, 'right'],
    ['3/4-10 UNC-2A-LH', 19.05, 2.54, 'left'],
    ['LH M16', 16, 2, 'left'],
    ['LH 3/4-10 UNC', 19.05, 2.54, 'left'],
  ] as const)('%s: %d mm, pitch %d mm, %s-hand', (text, diameter, pitch, hand) => {
    expect(ok(parseThread(text))).toEqual({
      diameter: expect.closeTo(diameter * mm, 12),
      pitch: expect.closeTo(pitch * mm, 12),
      hand,
    })
  })
  it.each([
    ['', 'not-a-thread'],
    ['bolt', 'not-a-thread'],
    ['M', 'not-a-thread'],
    ['M-16', 'not-a-thread'],
    ['M16 left', 'not-a-thread'],
    ['M16x1,5', 'not-a-thread'],
    ['3/4-16-2A', 'not-a-thread'],
    ['M17', 'pitch-missing'],
    ['M0', 'pitch-missing'],
    ['M0x1', 'not-a-thread'],
    ['1/0-10', 'not-a-thread'],
    ['0/4-10', 'not-a-thread'],
    ['3/4-0', 'not-a-thread'],
    ['M30', 'pitch-missing'],
    ['3/4', 'pitch-missing'],
    ['1-1/4 UNC', 'pitch-missing'],
    ['M16x2.5', 'pitch-wrong'],
    ['M16x16', 'pitch-wrong'],
    ['3/4-16 UNC', 'pitch-wrong'],
    ['3/4-10 UNF', 'pitch-wrong'],
    ['3/4-2', 'pitch-wrong'],
    // Coarser than a quarter of the diameter, as on M1 (ISO 261).
    ['M17x5', 'pitch-wrong'],
    ['11/16-5', 'pitch-wrong'],
  ] as const)('%j is %s', (text, type) => {
    expect(parseThread(text)).toMatchObject({ ok: false, problem: { type, text } })
  })
  it('a pitch that is not the series is answered with the right one', () => {
    expect(parseThread('3/4-16 UNC')).toMatchObject({ problem: { standard: expect.closeTo(2.54 * mm, 12) } })
  })
})

describe('nuts on a stud', () => {
  it('0.021 in down on M16 is 1.6 flats: two flats leave 0.133 mm, a half flat less leaves little ([derived] from the table)', () => {
    const correction = -0.021 * inch
    expect((-correction / M16.pitch) * 6).toBeCloseTo(1.6, 3)
    const { wholeFlats, halfFlats } = nutMoves(correction, M16)
    expect(wholeFlats).toEqual({
      turns: 0,
      flats: 2,
      direction: 'down',
      moved: expect.closeTo(-0.6667 * mm, 7),
      left: expect.closeTo(0.1333 * mm, 6),
      lowerNut: 'clockwise',
    })
    expect(halfFlats).toMatchObject({
      turns: 0,
      flats: 1.5,
      moved: expect.closeTo(-0.5 * mm, 12),
      left: expect.closeTo(-0.0334 * mm, 6),
    })
  })
  it('2.667 mm up on M16 is 1 turn 2 flats', () => {
    expect(nutMoves(2.667 * mm, M16).wholeFlats).toMatchObject({ turns: 1, flats: 2, direction: 'up' })
  })

  // A right-hand nut turned clockwise goes away from whoever looks at it (definition of a right-hand thread).
  // Looking down on an upright stud that is down; so the lower nut climbs, and raises the foot, turned the
  // other way: counter-clockwise from above, clockwise from below.
  it.each([
    ['right', 1, 'up', 'counter-clockwise'],
    ['right', -1, 'down', 'clockwise'],
    ['left', 1, 'up', 'clockwise'],
    ['left', -1, 'down', 'counter-clockwise'],
  ] as const)(
    '%s-hand thread, %d mm: foot goes %s, lower nut turns %s seen from above',
    (hand, by, direction, lowerNut) => {
      expect(nutMoves(by * mm, { ...M16, hand }).wholeFlats).toMatchObject({ direction, lowerNut })
    },
  )
  it('the screw motion says the same: advance along an axis goes with right-handed turning about that axis', () => {
    // Right-handed turning about +z (up) is counter-clockwise seen from above, where +z points at the eye; it
    // carries a right-hand nut up.
    const turnedAboutUp = { 'counter-clockwise': 1, clockwise: -1 }
    fc.assert(
      fc.property(
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
        fc.constantFrom('right' as const, 'left' as const),
        (by, hand) => {
          for (const move of Object.values(nutMoves(by, { ...M16, hand }))) {
            const turned = (move.lowerNut ? turnedAboutUp[move.lowerNut] : 0) * (move.turns + move.flats / 6)
            expect((hand === 'right' ? 1 : -1) * turned * M16.pitch).toBeCloseTo(move.moved, 12)
          }
        },
      ),
    )
  })

  it('nothing to do is no turn and no direction', () => {
    for (const small of [0, 0.08 * mm, -0.08 * mm]) {
      const { halfFlats, wholeFlats } = nutMoves(small, M16)
      expect(halfFlats).toEqual({ turns: 0, flats: 0, direction: 'none', moved: 0, left: small })
      expect(wholeFlats).not.toHaveProperty('lowerNut')
    }
  })
  it('moved and left add up; left is within half of the smallest move; flats stay below a turn', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
        fc.constantFrom('M10', 'M16x1.5', '3/4-10 UNC'),
        (correction, name) => {
          const thread = ok(parseThread(name))
          const { wholeFlats, halfFlats } = nutMoves(correction, thread)
          for (const [move, part] of [
            [wholeFlats, 6],
            [halfFlats, 12],
          ] as const) {
            expect(move.moved + move.left).toBeCloseTo(correction, 12)
            expect(Math.abs(move.left)).toBeLessThanOrEqual(thread.pitch / part / 2 + 1e-12)
            expect(move.flats).toBeLessThan(6)
            expect(Math.abs(move.moved)).toBeCloseTo(nutTravel(move, thread.pitch), 12)
          }
          expect(Math.abs(halfFlats.left)).toBeLessThanOrEqual(Math.abs(wholeFlats.left) + 1e-12)
        },
      ),
    )
  })
  it('midway between two flats the smaller move is taken', () => {
    expect(nutMoves(2.5 * 0.25 * mm, { pitch: 1.5 * mm, hand: 'right' }).wholeFlats.flats).toBe(2)
  })
  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1e9, -1e9])('a correction of %d is refused', (bad) => {
    expect(() => nutMoves(bad, M16)).toThrow(OutOfRange)
  })
  it.each([0, -0.002, Number.NaN, 1])('a pitch of %d is refused', (pitch) => {
    expect(() => nutMoves(0.001, { pitch, hand: 'right' })).toThrow(OutOfRange)
    expect(() => nutTravel({ turns: 1, flats: 0 }, pitch)).toThrow(OutOfRange)
  })
  it('turns that are not a number or less than none are refused', () => {
    for (const bad of [
      { turns: -1, flats: 0 },
      { turns: 0, flats: Number.NaN },
    ])
      expect(() => nutTravel(bad, 0.002)).toThrow(OutOfRange)
  })
})

describe('shims', () => {
  // Pre-cut thicknesses, inch (public shim notes).
  const stock = [1, 2, 3, 4, 5, 10, 15, 20, 25, 50, 75, 100, 125].map((thou) => thou * 0.001 * inch)
  const thou = (pieces: readonly number[]) => pieces.map((p) => Math.round(p / (0.001 * inch)))

  it.each([
    [3, [3]],
    [21, [20, 1]],
    [6, [5, 1]],
    [138, [125, 10, 3]],
    [249, [125, 100, 20, 4]],
    [0, []],
  ] as const)(
    '%d thou is %j: nearest sum, fewest pieces (arithmetic over the pre-cut list)',
    (wanted, pieces) => {
      const pack = shimPack(wanted * 0.001 * inch, stock)
      expect(thou(pack.pieces)).toHaveLength(pieces.length)
      expect(thou([pack.thickness])).toEqual([wanted])
      expect(pack.left).toBeCloseTo(0, 9)
      if (pieces.length < 2) expect(thou(pack.pieces)).toEqual(pieces)
    },
  )
  it('never more than four pieces: the rest is left over and said (Bachus & Custodio: at most 3 to 4)', () => {
    const pack = shimPack(1 * mm, [0.1 * mm])
    expect(pack).toEqual({
      pieces: [0.1, 0.1, 0.1, 0.1].map((t) => t * mm),
      thickness: expect.closeTo(0.4 * mm, 12),
      left: expect.closeTo(0.6 * mm, 12),
    })
  })
  it('may be over as well as under, whichever is nearer; midway the thinner', () => {
    expect(shimPack(0.19 * mm, [0.2 * mm, 0.15 * mm]).thickness).toBeCloseTo(0.2 * mm, 12)
    expect(shimPack(0.075 * mm, [0.05 * mm, 0.1 * mm]).pieces).toEqual([0.05 * mm])
  })
  it('is as near as trying every pack by count gets', () => {
    const list = [5, 7, 16, 43]
    const every: number[] = []
    for (let a = 0; a <= 4; a++)
      for (let b = 0; a + b <= 4; b++)
        for (let c = 0; a + b + c <= 4; c++)
          for (let d = 0; a + b + c + d <= 4; d++) every.push(a * 5 + b * 7 + c * 16 + d * 43)
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 250 }), (wanted) => {
        const pack = shimPack(
          wanted * 1e-5,
          list.map((t) => t * 1e-5),
        )
        expect(Math.abs(pack.left) / 1e-5).toBeCloseTo(
          Math.min(...every.map((sum) => Math.abs(sum - wanted))),
          6,
        )
        expect(pack.pieces.reduce((sum, p) => sum + p, 0)).toBeCloseTo(pack.thickness, 12)
      }),
    )
  })
  it.each([
    [() => shimPack(-0.001, stock)],
    [() => shimPack(Number.NaN, stock)],
    [() => shimPack(1e9, stock)],
    [() => shimPack(0.001, [])],
    [() => shimPack(0.001, [0])],
    [() => shimPack(0.001, [Number.NaN])],
    [() => shimPack(0.001, [-0.001])],
    [
      () =>
        shimPack(
          0.001,
          Array.from({ length: 42 }, (_, i) => (i + 1) * 1e-5),
        ),
    ],
  ])('bad numbers are refused: %s', (bad) => {
    expect(bad).toThrow(OutOfRange)
  })
})

// A single-start thread goes one pitch a turn: ISO 5408, lead.
it('a flat of M16 lifts a foot by a sixth of its 2 mm pitch, and turned back lowers it as much', () => {
  expect(heightOf(Math.PI / 3, M16)).toBeCloseTo((2 * mm) / 6, 12)
  expect(heightOf(-2 * Math.PI, M16)).toBeCloseTo(-2 * mm, 12)
})
