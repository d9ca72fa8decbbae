// Curves as pairs of amounts.
import { describe, expect, it } from 'vitest'
import { factValue, read } from '../job/meaning.ts'

const curve = (value: string) => {
  const { blocks, problems } = read(`hull { calm-water-resistance: ${value} }`)
  return {
    value: factValue(blocks, 'hull.calm-water-resistance'),
    problems: problems.map(({ type }) => type),
  }
}

describe('points of a curve', () => {
  // 1 kn = 1852 m / 3600 s (SI Brochure).
  it('are pairs of amounts, each in a unit of its own', () => {
    const { value, problems } = curve('4 kn 0.38 kN, 5 kn 620 N')
    expect(problems).toEqual([])
    expect(value).toMatchObject([
      { at: (4 * 1852) / 3600, value: 380 },
      { at: (5 * 1852) / 3600, value: 620 },
    ])
  })

  it.each([
    ['4 kn 0.38 kN', ['not-this-value']],
    ['5 kn 0.62 kN, 4 kn 0.38 kN', ['not-this-value']],
    ['4 kn 0.38 kN, 4 kn 0.62 kN', ['not-this-value']],
    ['4 kn, 5 kn', ['not-this-value']],
    ['4 kn 0.38 kN 5, 5 kn 0.62 kN', ['not-this-value']],
    ['0.38 kN 4 kn, 0.62 kN 5 kn', ['wrong-kind', 'wrong-kind']],
    ['4 kn 0.38, 5 kn 0.62 kN', ['no-unit']],
    ['4 kn 1e9 kN, 5 kn 1e9 kN', ['outside-allowed']],
    ['4 kn 1 kN, 500 kn 2 kN', ['outside-allowed']],
    [Array.from({ length: 41 }, (_, i) => `${i + 1} kn 1 kN`).join(', '), ['list-too-long']],
  ])('%s is refused', (written, problems) => {
    expect(curve(written)).toEqual({ value: undefined, problems })
  })
})

describe('a curve that falls', () => {
  const clears = (value: string) => {
    const { blocks, problems } = read(`protection fuse { clears: ${value} }`)
    return {
      value: factValue(blocks, 'protection.clears'),
      problems: problems.map(({ type, written }) => [type, written]),
    }
  }

  it('may stay level', () => {
    const { value, problems } = clears('945 A 100 s, 3 kA 100 ms, 5 kA 0.1 s')
    expect(problems).toEqual([])
    expect(value).toMatchObject([
      { at: 945, value: 100 },
      { at: 3000, value: 0.1 },
      { at: 5000, value: 0.1 },
    ])
  })

  it.each([
    ['945 A 100 s, 3 kA 101 s', [['not-this-value', '3 kA 101 s']]],
    ['945 A 100 s, 3 kA 0.1 s, 4 kA 0.2 s', [['not-this-value', '4 kA 0.2 s']]],
    ['3 kA 0.1 s, 945 A 100 s', [['not-this-value', '945 A 100 s']]],
    ['945 A 100 s, 3 kA 0 s', [['outside-allowed', '0 s']]],
    [
      '100 s 945 A, 0.1 s 3 kA',
      [
        ['wrong-kind', '100 s'],
        ['wrong-kind', '945 A'],
      ],
    ],
  ])('%s is refused where it is wrong', (written, problems) => {
    expect(clears(written)).toEqual({ value: undefined, problems })
  })
})

describe('a lower limit', () => {
  const range = (value: string) => {
    const { blocks, problems } = read(`service { range: ${value} }`)
    return { value: factValue(blocks, 'service.range'), problems: problems.map(({ type }) => type) }
  }

  it.each(['min 20 nmi', '20 nmi', '20..30 nmi'])('%s asks for its low end', (written) => {
    expect(range(written)).toEqual({ value: { low: 37_040 }, problems: [] })
  })

  it('is no upper limit: that would ask for nothing', () => {
    expect(range('max 20 nmi')).toEqual({ value: undefined, problems: ['not-this-value'] })
  })
})
