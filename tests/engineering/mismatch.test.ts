// What went wrong with a move: each fault is made on a machine, read with a gauge of limited step, and has to be named. Geometry alone is the
// reference; the 99 % points of chi-square are those of the NIST/SEMATECH e-Handbook, 1.3.6.7.4.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Hypothesis } from '../../server/src/engineering/alignment/hypothesis.ts'
import { allowsSteps, explainMismatch } from '../../server/src/engineering/alignment/mismatch.ts'
import { isSound, suppositions } from '../../server/src/engineering/alignment/suppositions.ts'
import { type Axis, feet, mm, moved, noted, read, start, uOffset, uSlope } from './mismatch-machine.ts'

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

/** What is named of two readings and a move, and whether steps may follow. */
const judged = (
  { first = start, later }: { readonly first?: Axis; readonly later: Axis },
  heights: readonly [number, number] = up,
  sideways: readonly [number, number] = across,
) => {
  const outcome = explainMismatch({
    feet,
    moves: noted(heights, sideways),
    before: read(first),
    after: read(later),
  })
  if (!outcome.ok) throw new Error(outcome.problem.type)
  return {
    named: outcome.value.explanations.map(({ hypothesis }) => hypothesis),
    steps: allowsSteps(outcome.value),
  }
}

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

  it('shows the after pair that was forgotten, the same for a stiff machine as one of its nuts the wrong way', () => {
    const { named: found, steps } = judged({ later: moved(start, [0, up[1]], across) })
    expect(found).toContainEqual({ type: 'forgotten', feet: ['aft-port', 'aft-stbd'] })
    expect(found.filter(({ type }) => type === 'turned-the-wrong-way')).toHaveLength(2)
    expect(found).toHaveLength(3)
    expect(steps).toBe(true)
  })

  it('shows one foot that did not follow: half of its station', () => {
    const { named: found, steps } = judged({ later: moved(start, [up[0], up[1] / 2], across) })
    expect(new Set(found)).toEqual(
      new Set(['fwd-port', 'fwd-stbd'].map((foot) => ({ type: 'did-not-follow', feet: [foot] }))),
    )
    expect(steps).toBe(false)
  })

  it('blames no foot that was not to be moved up or down', () => {
    const only = noted([0, up[1]]).map((move, i) =>
      i === 3 ? { ...move, vertical: { value: 0, standard: 0 } } : move,
    )
    const outcome = explainMismatch({
      feet,
      moves: only,
      before: read(start),
      after: read(moved(start, [0, -up[1] / 2])),
    })
    const found = outcome.ok ? outcome.value.explanations.map(({ hypothesis }) => hypothesis) : []
    // Half of the station up is the station up by half.
    expect(found).toContainEqual({ type: 'turned-the-wrong-way', feet: ['fwd-port'] })
    expect(found.filter((of) => 'feet' in of && of.feet.some((foot) => foot !== 'fwd-port'))).toEqual([])
  })

  it('shows a machine that came half the way', () => {
    const [first] = named(moved(start, [up[0] / 2, up[1] / 2], [across[0] / 2, across[1] / 2]))
    expect(first).toMatchObject({ type: 'part-of-the-way' })
    expect(first?.type === 'part-of-the-way' && first.share).toBeCloseTo(0.5, 6)
  })

  const flipped = (axis: Axis, plane: 'vertical' | 'horizontal'): Axis =>
    plane === 'vertical' ? { ...axis, oz: -axis.oz, tv: -axis.tv } : { ...axis, oy: -axis.oy, th: -axis.th }
  const [aft, fwd] = up
  const [aftY, fwdY] = across
  const right = moved(start, up, across)
  it.each<readonly [string, Hypothesis, { readonly first?: Axis; readonly later: Axis }]>([
    ['nothing that moved', { type: 'nothing-moved' }, { later: start }],
    [
      'heights that were not set',
      { type: 'forgotten', feet: feet.map(({ name }) => name) },
      { later: moved(start, [0, 0], across) },
    ],
    ['sideways not done', { type: 'sideways-not-done' }, { later: moved(start, up) }],
    [
      'a move made twice over',
      { type: 'made-twice' },
      { later: moved(start, [2 * aft, 2 * fwd], [2 * aftY, 2 * fwdY]) },
    ],
    [
      'moves made at the wrong end',
      { type: 'made-at-the-wrong-end', made: 'all' },
      { later: moved(start, [fwd, aft], [fwdY, aftY]) },
    ],
    [
      'heights set at the wrong end',
      { type: 'made-at-the-wrong-end', made: 'heights' },
      { later: moved(start, [fwd, aft], across) },
    ],
    [
      'top and bottom swapped in the first',
      { type: 'top-and-bottom-swapped', swapped: 'first' },
      { first: flipped(start, 'vertical'), later: right },
    ],
    [
      'sides swapped in the later reading',
      { type: 'sides-swapped', swapped: 'later' },
      {
        later: flipped(moved({ ...start, th: 2e-3 }, up, across), 'horizontal'),
        first: { ...start, th: 2e-3 },
      },
    ],
    [
      'sides swapped in the first',
      { type: 'sides-swapped', swapped: 'first' },
      { first: flipped(start, 'horizontal'), later: right },
    ],
  ])('shows %s, alone', (_, truth, readings) => {
    expect(judged(readings)).toEqual({ named: [truth], steps: isSound(truth) })
  })

  it('shows top and bottom swapped in the later reading of a machine that still leans', () => {
    const some = [0.2 * mm, 0.3 * mm] as const
    const later = flipped(moved(start, some, across), 'vertical')
    const truth = { type: 'top-and-bottom-swapped', swapped: 'later' }
    expect(judged({ later }, some)).toEqual({ named: [truth], steps: false })
  })

  it('names all that nobody can tell apart from all nuts turned the wrong way, and gives no steps', () => {
    const all: readonly Hypothesis[] = [
      { type: 'turned-the-wrong-way', feet: feet.map(({ name }) => name) },
      { type: 'other-hand' },
      { type: 'top-and-bottom-swapped', swapped: 'both' },
    ]
    const { named: found, steps } = judged({ later: moved(start, [-aft, -fwd], across) })
    expect(new Set(found)).toEqual(new Set(all))
    expect(steps).toBe(false)
    const mirrored = judged({ first: flipped(start, 'vertical'), later: flipped(right, 'vertical') })
    expect(new Set(mirrored.named)).toEqual(new Set(all))
  })

  it('names both that nobody can tell apart from sideways to the other side', () => {
    const { named: found, steps } = judged({ later: moved(start, up, [-aftY, -fwdY]) })
    expect(found).toEqual([{ type: 'wrong-side' }, { type: 'sides-swapped', swapped: 'both' }])
    expect(steps).toBe(false)
  })

  it('shows another pitch where sideways moves tell it from a part of the way', () => {
    const [heights, sideways] = [[0.9 * mm, 1.2 * mm] as const, [-0.6 * mm, -2 * mm] as const]
    const later = moved(start, [0.75 * heights[0], 0.75 * heights[1]], sideways)
    const { named: found, steps } = judged({ later }, heights, sideways)
    expect(found.map(({ type }) => type)).toEqual(['other-pitch'])
    expect(found[0]?.type === 'other-pitch' && found[0].factor).toBeCloseTo(0.75, 6)
    expect(steps).toBe(false)
  })

  it('names a pitch beside half the way, and beside a move made twice over, where only nuts were turned', () => {
    const half = judged({ later: moved(start, [aft / 2, fwd / 2]) }, up, [0, 0])
    expect(half.named.map(({ type }) => type).sort()).toEqual(['other-pitch', 'part-of-the-way'])
    const twice = judged({ later: moved(start, [2 * aft, 2 * fwd]) }, up, [0, 0])
    expect(twice.named.map(({ type }) => type).sort()).toEqual(['made-twice', 'other-pitch'])
    expect([half.steps, twice.steps]).toEqual([false, false])
  })

  it('blames no thread for heights that were noted as lengths', () => {
    const outcome = explainMismatch({
      feet,
      moves: noted(up, across).map(({ byNut: _, ...lengths }) => lengths),
      before: read(start),
      after: read(moved(start, [-aft, -fwd], across)),
    })
    expect(outcome.ok && outcome.value.explanations.map(({ hypothesis: { type } }) => type).sort()).toEqual([
      'top-and-bottom-swapped',
      'turned-the-wrong-way',
    ])
  })

  it('asks about a gauge circle only where the slope depends on one', () => {
    const log = { feet, moves: noted(up, across), components: [] }
    const circle = {
      kind: 'slope',
      plane: 'vertical',
      before: 0,
      found: 1e-3,
      variance: 1e-12,
      effects: [-1, -1, 1, 1],
    } as const
    const asks = (onCircle: boolean) =>
      suppositions({ ...log, components: [circle], onCircle }).some(
        ({ hypothesis: { type } }) => type === 'other-gauge-diameter',
      )
    expect([asks(true), asks(false)]).toEqual([true, false])
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
    expect(outcome.ok && allowsSteps(outcome.value)).toBe(false)
  })

  it('names nothing when nothing explains it', () => {
    const found = explained({ oz: 3 * mm, tv: 4e-3, oy: -2 * mm, th: -5e-3 })
    expect(found).toMatchObject({ noise: false, explanations: [] })
    expect(allowsSteps(found)).toBe(false)
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

// Steps that go on from a reading are safe only where neither the reading nor the bed is in doubt: common practice, no source.
it.each([
  [{ type: 'nothing-moved' }, false],
  [{ type: 'part-of-the-way', share: 0.5 }, false],
  [{ type: 'offset-not-carried' }, false],
  [{ type: 'other-hand' }, false],
  [{ type: 'other-pitch', factor: 1 }, false],
  [{ type: 'other-gauge-diameter', factor: 0.5 }, false],
  [{ type: 'did-not-follow', feet: ['aft-port'] }, false],
  [{ type: 'forgotten', feet: ['aft-port'] }, true],
  [{ type: 'made-twice' }, true],
] as const)('%o lets steps go on: %s', (hypothesis, sound) => {
  expect(isSound(hypothesis)).toBe(sound)
})
