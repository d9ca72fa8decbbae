// A kernel is not asked again for an input that says the same.
import { describe, expect, it } from 'vitest'
import { solve } from '../../server/src/store/solve.ts'

/** A kernel that counts how often it is asked. */
function counting<Input>(most?: number) {
  const asked: Input[] = []
  const kernel = (input: Input) => {
    asked.push(input)
    return { of: input }
  }
  return { asked, of: solve(kernel, most) }
}

const feet = (up: number) => ({ feet: [{ name: 'aft', up }, { name: 'fwd' }], limit: 1e-4 })

describe('solve', () => {
  it('keeps a result by the value of its input', () => {
    const { asked, of } = counting<unknown>()
    expect(of(feet(1e-3))).toBe(of(feet(1e-3)))
    expect(asked).toHaveLength(1)
  })

  it.each<[string, unknown, unknown]>([
    ['a figure in the last place', feet(0.1 + 0.2), feet(0.3)],
    ['a sign of nothing', feet(0), feet(-0)],
    ['an infinite figure', feet(Number.POSITIVE_INFINITY), feet(Number.NEGATIVE_INFINITY)],
    ['a figure that is none', feet(Number.NaN), feet(0)],
    ['a fact that is not there', [{ up: undefined }], [{ up: null }]],
    ['a text and a number', ['1'], [1]],
    ['what is in which list', [[1], [2]], [[1, 2], []]],
  ])('tells inputs apart by %s', (_, one, other) => {
    const { asked, of } = counting<unknown>()
    expect(of(one)).not.toBe(of(other))
    expect(asked).toEqual([one, other])
  })

  it('drops the result that was asked for longest ago', () => {
    const { asked, of } = counting<number>(2)
    for (const input of [1, 2, 1, 3]) of(input)
    expect(asked).toEqual([1, 2, 3])
    of(1)
    expect(asked).toEqual([1, 2, 3])
    of(2)
    expect(asked).toEqual([1, 2, 3, 2])
  })

  it('asks again where the kernel threw', () => {
    let asked = 0
    const of = solve((input: number) => {
      asked += 1
      if (asked === 1) throw new Error('once')
      return input
    })
    expect(() => of(1)).toThrow('once')
    expect(of(1)).toBe(1)
  })
})
