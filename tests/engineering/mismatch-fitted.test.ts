// Explanations with a figure fitted to them: a share of the way, a pitch, a circle. Geometry is the reference; the 99 % points of chi-square are those of
// the NIST/SEMATECH e-Handbook, 1.3.6.7.4.
import { describe, expect, it } from 'vitest'
import { explainMismatch } from '../../server/src/engineering/alignment/mismatch.ts'
import { feet, mm, moved, noted, read, start } from './mismatch-machine.ts'

const up = [0.3 * mm, 1.2 * mm] as const

/** Types named of a machine that went `went` of the heights and the way sideways that are noted. */
function typesOf(
  went: number,
  [aft, fwd]: readonly [number, number],
  [aftY, fwdY]: readonly [number, number] = [0, 0],
) {
  const outcome = explainMismatch({
    feet,
    moves: noted([aft, fwd], [aftY, fwdY]),
    before: read(start),
    after: read(moved(start, [went * aft, went * fwd], [went * aftY, went * fwdY])),
  })
  if (!outcome.ok) throw new Error(outcome.problem.type)
  return outcome.value.explanations.map(({ hypothesis: { type } }) => type)
}

describe('what is fitted', () => {
  it('is not a share of nearly all: 92 hundredths of the way is no part of it', () => {
    const some = (share: number) => typesOf(share, [3 * mm, 9 * mm], [-2 * mm, -5 * mm])
    expect(some(0.92)).not.toContain('part-of-the-way')
    expect(some(0.8)).toContain('part-of-the-way')
  })

  it('is no pitch where the heights are too small to tell one, less than three standard deviations', () => {
    // Offset of both readings 0.0085 mm; of the feet, each known to 0.01 mm, 0.011 mm at the coupling: 0.014 mm together.
    const asks = (by: number) => typesOf(2.9, [by, by])
    expect(asks(0.035 * mm)).not.toContain('other-pitch')
    expect(asks(0.07 * mm)).toContain('other-pitch')
  })

  it('costs a degree of freedom: of two slopes one is left, and 6.635 is its 99 % point', () => {
    // Half the way upward. Sideways nothing was noted: 0.113 mrad of both readings and 0.026 mrad of the feet are 0.1161 mrad of noise.
    const off = (chiSquare: number) => {
      const half = moved({ ...start, th: start.th + 0.1161e-3 * Math.sqrt(chiSquare) }, [
        up[0] / 2,
        up[1] / 2,
      ])
      const outcome = explainMismatch({
        feet,
        moves: noted(up),
        before: read(start, false),
        after: read(half, false),
      })
      return outcome.ok ? outcome.value.explanations.map(({ hypothesis: { type } }) => type) : []
    }
    expect(off(5.5)).toContain('part-of-the-way')
    for (const type of ['part-of-the-way', 'other-pitch', 'other-gauge-diameter'])
      expect(off(8)).not.toContain(type)
  })

  it('is everything that was read, where no move was noted: nothing is left to be noise', () => {
    const outcome = explainMismatch({
      feet,
      moves: noted([0, 0]),
      before: read(start),
      after: read(moved(start, [0.3 * mm, 1.2 * mm])),
    })
    expect(outcome).toMatchObject({
      value: { noise: false, explanations: [{ hypothesis: { type: 'move-not-noted' } }] },
    })
  })

  it('is named after what fits as well without (Akaike: two for each figure)', () => {
    expect(typesOf(2.02, up)).toEqual(['made-twice', 'other-pitch'])
  })
})
