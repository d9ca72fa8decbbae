// What went wrong with a move: each fault is made on a machine, read with a gauge of limited step, and has to be named. Geometry alone is the
// reference; the 99 % points of chi-square are those of the NIST/SEMATECH e-Handbook, 1.3.6.7.4.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { explainMismatch, type Stand } from '../../server/src/engineering/alignment/mismatch.ts'

const mm = 1e-3
const feet = [
  { name: 'aft-port', x: 0.18, y: -0.14 },
  { name: 'aft-stbd', x: 0.18, y: 0.14 },
  { name: 'fwd-port', x: 0.56, y: -0.14 },
  { name: 'fwd-stbd', x: 0.56, y: 0.14 },
]

interface Axis {
  readonly oz: number
  readonly tv: number
  readonly oy: number
  readonly th: number
}

/** A machine moved at its stations: the line through both. */
const moved = (
  axis: Axis,
  [aft, fwd]: readonly [number, number],
  [aftY, fwdY]: readonly [number, number] = [0, 0],
): Axis => {
  const tv = (fwd - aft) / (0.56 - 0.18)
  const th = (fwdY - aftY) / (0.56 - 0.18)
  return {
    oz: axis.oz + aft - tv * 0.18,
    tv: axis.tv + tv,
    oy: axis.oy + aftY - th * 0.18,
    th: axis.th + th,
  }
}

const uSlope = 0.08e-3
const uOffset = 0.006 * mm
const read = ({ oz, tv, oy, th }: Axis, offsets = true): Stand => ({
  slope: {
    vertical: { value: tv, standard: uSlope },
    horizontal: { value: th, standard: uSlope },
  },
  ...(offsets && {
    offset: {
      vertical: { value: oz, standard: uOffset },
      horizontal: { value: oy, standard: uOffset },
    },
  }),
})
const noted = ([aft, fwd]: readonly [number, number], [aftY, fwdY]: readonly [number, number] = [0, 0]) =>
  [
    [aft, aftY],
    [aft, aftY],
    [fwd, fwdY],
    [fwd, fwdY],
  ].map(([up = 0, across = 0]) => ({
    vertical: { value: up, standard: 0.01 * mm },
    horizontal: { value: across, standard: 0.01 * mm },
  }))

const start: Axis = { oz: 0.1 * mm, tv: -2.4e-3, oy: -0.05 * mm, th: 0.6e-3 }
const up = [0.3 * mm, 1.2 * mm] as const
const across = [-0.1 * mm, -0.3 * mm] as const

const explained = (after: Axis, offsets = true) => {
  const outcome = explainMismatch({
    feet,
    moves: noted(up, across),
    before: read(start, offsets),
    after: read(after, offsets),
  })
  if (!outcome.ok) throw new Error(outcome.problem.type)
  return outcome.value
}
const named = (after: Axis, offsets = true) =>
  explained(after, offsets).explanations.map(({ hypothesis }) => hypothesis)

describe('a reading after a move', () => {
  it('that shows what was meant is left alone', () => {
    const found = explained(moved(start, up, across))
    expect(found).toMatchObject({ noise: true, explanations: [], degreesOfFreedom: 4 })
    expect(found.chiSquare).toBeCloseTo(0, 6)
  })

  it('shows the forward pair turned the wrong way', () => {
    expect(named(moved(start, [up[0], -up[1]], across))[0]).toEqual({
      type: 'turned-the-wrong-way',
      feet: ['fwd-port', 'fwd-stbd'],
    })
  })

  it('shows all turned the wrong way', () => {
    expect(named(moved(start, [-up[0], -up[1]], across))[0]).toMatchObject({
      type: 'turned-the-wrong-way',
      feet: feet.map(({ name }) => name),
    })
  })

  it('shows the after pair that did not follow', () => {
    expect(named(moved(start, [0, up[1]], across))[0]).toEqual({
      type: 'did-not-follow',
      feet: ['aft-port', 'aft-stbd'],
    })
  })

  it('shows a machine that came half the way', () => {
    const [first] = named(moved(start, [up[0] / 2, up[1] / 2], [across[0] / 2, across[1] / 2]))
    expect(first).toMatchObject({ type: 'part-of-the-way' })
    expect(first?.type === 'part-of-the-way' && first.share).toBeCloseTo(0.5, 6)
  })

  it('shows sideways moves to the wrong side', () => {
    expect(named(moved(start, up, [0.1 * mm, 0.3 * mm]))[0]).toEqual({ type: 'wrong-side' })
  })

  it('shows port and starboard swapped, and top and bottom', () => {
    const right = moved(start, up, across)
    expect(named({ ...right, oy: -right.oy, th: -right.th })).toContainEqual({ type: 'sides-swapped' })
    const far = moved(start, [0.2 * mm, 0.3 * mm], across)
    const outcome = explainMismatch({
      feet,
      moves: noted([0.2 * mm, 0.3 * mm], across),
      before: read(start),
      after: read({ ...far, oz: -far.oz, tv: -far.tv }),
    })
    expect(outcome.ok && outcome.value.explanations.map(({ hypothesis }) => hypothesis)).toContainEqual({
      type: 'top-and-bottom-swapped',
    })
  })

  // The gaps of a circle half as wide show half the difference: slopes as computed are half the true ones, before and after.
  it('shows a gauge circle of another size than stated', () => {
    const factor = 0.5
    const scaled = (axis: Axis) => ({ ...axis, tv: axis.tv * factor, th: axis.th * factor })
    const outcome = explainMismatch({
      feet,
      moves: noted(up, across),
      before: read(scaled(start)),
      after: read(scaled(moved(start, up, across))),
    })
    const [first] = outcome.ok ? outcome.value.explanations : []
    expect(first?.hypothesis.type).toBe('other-gauge-diameter')
    expect(first?.hypothesis.type === 'other-gauge-diameter' && first.hypothesis.factor).toBeCloseTo(0.5, 6)
  })

  it('shows an offset that was not carried', () => {
    const right = moved(start, [0, 1.2 * mm], across)
    const outcome = explainMismatch({
      feet,
      moves: noted([0, 1.2 * mm], across),
      before: read(start),
      after: read({ ...right, oz: start.oz, oy: start.oy }),
    })
    expect(outcome.ok && outcome.value.explanations[0]?.hypothesis).toEqual({ type: 'offset-not-carried' })
  })

  it('names nothing when nothing explains it', () => {
    const found = explained({ oz: 3 * mm, tv: 4e-3, oy: -2 * mm, th: -5e-3 })
    expect(found).toMatchObject({ noise: false, explanations: [] })
  })

  it('knows less without offsets, and still names a wrong way', () => {
    expect(named(moved(start, [-up[0], -up[1]], across), false).map(({ type }) => type)).toContain(
      'turned-the-wrong-way',
    )
  })
})

describe('noise', () => {
  const gauss = fc
    .tuple(fc.double({ min: 1e-9, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }))
    .map(([a, b]) => Math.sqrt(-2 * Math.log(a)) * Math.cos(2 * Math.PI * b))
  const noises = fc.tuple(gauss, gauss, gauss, gauss)

  it('is told from a mistake by the size of what was read', () => {
    fc.assert(
      fc.property(noises, ([a, b, c, d]) => {
        const right = moved(start, up, across)
        // Both readings' noise in one, at most two standard deviations of each.
        const clip = (z: number) => Math.max(-2, Math.min(2, z))
        const after = {
          oz: right.oz + clip(a) * uOffset,
          tv: right.tv + clip(b) * uSlope,
          oy: right.oy + clip(c) * uOffset,
          th: right.th + clip(d) * uSlope,
        }
        const { chiSquare, explanations, noise } = explained(after)
        expect(chiSquare).toBeLessThanOrEqual(16)
        if (noise) expect(explanations).toEqual([])
      }),
    )
  })

  it('is mirrored with the machine', () => {
    fc.assert(
      fc.property(noises, ([a, b, c, d]) => {
        const axis = { oz: a * mm, tv: b * 1e-3, oy: c * mm, th: d * 1e-3 }
        const of = (side: 1 | -1) => {
          const outcome = explainMismatch({
            feet: feet.map((foot) => ({ ...foot, y: side * foot.y })),
            moves: noted(up, [side * across[0], side * across[1]]),
            before: read({ ...start, oy: side * start.oy, th: side * start.th }),
            after: read({ ...axis, oy: side * axis.oy, th: side * axis.th }),
          })
          return outcome.ok ? outcome.value : undefined
        }
        expect(of(-1)?.chiSquare).toBeCloseTo(of(1)?.chiSquare ?? Number.NaN, 3)
        expect(of(-1)?.explanations.map((e) => e.hypothesis.type)).toEqual(
          of(1)?.explanations.map((e) => e.hypothesis.type),
        )
      }),
    )
  })
})
