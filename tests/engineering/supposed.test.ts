// What two readings say of a mistake that was supposed of two others. Geometry alone is the reference; the 99 % points of chi-square are those of the
// NIST/SEMATECH e-Handbook, 1.3.6.7.4.
import { describe, expect, it } from 'vitest'
import type { Hypothesis } from '../../server/src/engineering/alignment/hypothesis.ts'
import {
  explainMismatch,
  type Readings,
  speaksAgainst,
} from '../../server/src/engineering/alignment/mismatch.ts'
import { hypothesisKey, isLasting, supposed } from '../../server/src/engineering/alignment/suppositions.ts'
import { feet, mm, moved, noted, read, start } from './mismatch-machine.ts'

describe('what was supposed of other readings', () => {
  const asNoted = (by: readonly [number, number]): Readings => ({
    feet,
    moves: noted(by),
    before: read(start),
    after: read(moved(start, by)),
  })
  const against = (of: Hypothesis, readings: Readings) => {
    const mismatch = explainMismatch(readings)
    if (!mismatch.ok) throw new Error('feet that set no slope')
    return speaksAgainst(of, readings, mismatch.value)
  }
  const lasting: readonly Hypothesis[] = [
    { type: 'other-hand' },
    { type: 'other-pitch', factor: 0.75 },
    { type: 'other-gauge-diameter', factor: 0.5 },
    { type: 'did-not-follow', feet: ['fwd-port'] },
    { type: 'top-and-bottom-swapped', swapped: 'both' },
    { type: 'top-and-bottom-swapped', swapped: 'first' },
  ]

  it.each(lasting.map((of) => [of.type, of] as const))(
    '%s lasts, and a move as noted speaks against it',
    (_, of) => {
      expect(isLasting(of)).toBe(true)
      expect(against(of, asNoted([0.3 * mm, 4 * mm]))).toBe(true)
    },
  )

  it.each(lasting.map((of) => [of.type, of] as const))(
    '%s is not spoken against where nothing moved',
    (_, of) => {
      const still = asNoted([0, 0])
      const hasBefore = 'swapped' in of && of.swapped === 'first'
      expect(against(of, still)).toBe(hasBefore)
    },
  )

  it('ends with its reading where it is of that one alone, or of the move', () => {
    for (const of of [
      { type: 'nothing-moved' },
      { type: 'part-of-the-way', share: 0.5 },
      { type: 'offset-not-carried' },
      { type: 'copied', from: 'r1' },
      { type: 'made-twice' },
    ] as const)
      expect(isLasting(of)).toBe(false)
  })

  it('lasts where places are swapped in the later reading: who did it once may do it again', () => {
    expect(isLasting({ type: 'sides-swapped', swapped: 'later' })).toBe(true)
  })

  it('keeps the figure that was fitted, and goes by the same name whatever that is', () => {
    const of = { type: 'other-pitch', factor: 0.75 } as const
    expect(hypothesisKey(of)).toBe(hypothesisKey({ ...of, factor: 0.8 }))
    expect(hypothesisKey(of)).not.toBe(hypothesisKey({ ...of, type: 'other-gauge-diameter' }))
    const component = {
      kind: 'slope',
      plane: 'vertical',
      before: 1e-3,
      found: 2e-3,
      variance: 1e-10,
      effects: feet.map(({ x }) => (x > 0.4 ? 1 : -1) / (2 * 0.38)),
    } as const
    const log = { feet, moves: noted([0, 0.38 * mm]), components: [component], onCircle: true }
    // 1 mrad by the move as noted, three quarters of it by the thread supposed.
    expect(supposed(of, log)?.expects(component).value).toBeCloseTo(1.75e-3, 9)
    expect(supposed({ type: 'other-gauge-diameter', factor: 2 }, { ...log, onCircle: false })).toBeUndefined()
  })

  it('a circle larger than the gauge can go in on explains nothing', () => {
    const by = [0.3 * mm, 4 * mm] as const
    const to = moved(start, by)
    const [before, after] = [start, to].map((axis) => read({ ...axis, tv: axis.tv * 1.5, th: axis.th * 1.5 }))
    const explain = (largestCircle?: number) => {
      const outcome = explainMismatch({
        feet,
        moves: noted(by),
        before: before ?? read(start),
        after: after ?? read(to),
        ...(largestCircle !== undefined && { largestCircle }),
      })
      return outcome.ok ? outcome.value.explanations.map(({ hypothesis }) => hypothesis.type) : []
    }
    expect(explain()).toContain('other-gauge-diameter')
    expect(explain(1.6)).toContain('other-gauge-diameter')
    expect(explain(1.2)).not.toContain('other-gauge-diameter')
  })
})
