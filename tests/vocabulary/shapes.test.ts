// What the vocabulary's own forms give, and that none of them drops what was written.
import { describe, expect, it } from 'vitest'
import { formatSi } from '../../server/src/quantity/format.ts'
import {
  blockKinds,
  type FactPath,
  type FactValue,
  findKind,
  vocabulary,
} from '../../server/src/vocabulary/index.ts'
import { factValue, read } from '../job/meaning.ts'

const moved = (value: string) => {
  const { blocks, problems } = read(`drive d {\n  move after dry-1 {\n    fwd: ${value}\n  }\n}`)
  return {
    value: blocks[0]?.children[0]?.others.get('fwd')?.value,
    problems: problems.map(({ type }) => type),
  }
}
const mapped = (value: string) => {
  const { blocks, problems } = read(`drive d {\n  phase-map { ${value} }\n}`)
  return { value: factValue(blocks, 'd.phase-map.pairs'), problems: problems.map(({ type }) => type) }
}

describe('a move of a foot', () => {
  // A hexagon nut has six flats to the turn (geometry of a hexagon); up and starboard positive.
  it.each([
    ['up 1 turn 2 flats', { turn: (2 * Math.PI * 8) / 6 }],
    ['down 3 flats', { turn: -Math.PI }],
    ['up 3-1/2 flats', { turn: (2 * Math.PI * 3.5) / 6 }],
    ['down 0.5 mm, port 0.2 mm', { rise: -0.0005, starboard: -0.0002 }],
    ['starboard 0.3 mm, up 1 turn', { turn: 2 * Math.PI, starboard: 0.0003 }],
  ])('%s', (written, expected) => {
    const { value, problems } = moved(written)
    expect(problems).toEqual([])
    expect(Object.keys(value as object).sort()).toEqual(Object.keys(expected).sort())
    for (const [way, by] of Object.entries(expected))
      expect((value as Record<string, number>)[way]).toBeCloseTo(by, 12)
  })

  // Two amounts for one thing cannot be told from a slip of the pen (common practice, no source).
  it.each([
    'up 1 flat, down 2 flats',
    'up 0.5 mm, down 0.2 mm',
    'port 1 mm, starboard 2 mm',
    'up',
    'starboard 1 flat',
  ])('%s is refused', (written) => {
    expect(moved(written)).toEqual({ value: undefined, problems: ['not-this-value'] })
  })
})

describe('a phase map', () => {
  // IEC 60034-8 puts a digit before the letter for windings that are alike: 1U1, 2U1 (from memory).
  it('takes marks that begin with a digit, in quotes', () => {
    const { value, problems } = mapped('A to "1U1", B to "1V1", C to "1W1"')
    expect(problems).toEqual([])
    expect(value).toMatchObject([
      { from: 'A', to: '1U1' },
      { from: 'B', to: '1V1' },
      { from: 'C', to: '1W1' },
    ])
  })

  it('needs both ends of a pair', () => {
    expect(mapped('A to U, B to').problems).toEqual(['not-this-value'])
  })
})

describe('a size', () => {
  // No diameter is below zero, whatever its tolerance says (geometry).
  it('has both limits within what is allowed', () => {
    const { problems } = read('shaft { diameter: 1 mm ± 5 mm }')
    expect(problems.map(({ type }) => type)).toEqual(['outside-allowed'])
  })
})

describe('limits', () => {
  // How limits are written by hand (common practice, no source).
  it.each(['84 to 108 V', '84-108 V', '84 - 108 V'])('%s is told how it is written here', (written) => {
    const { problems } = read(`battery b { window: ${written} }`)
    expect(problems).toMatchObject([{ type: 'not-this-value', nearest: '84..108 V' }])
  })

  it('may be worked out', () => {
    const { blocks, problems } = read('battery b { window: 108 V - 24 V }')
    expect(problems).toEqual([])
    expect(factValue(blocks, 'b.window')).toMatchObject({ low: 84, high: 84 })
  })
})

describe('every amount', () => {
  const facts = blockKinds.flatMap((kind) =>
    Object.entries(kind.facts).map(([name, { shape, example }]) => ({
      path: `${kind.kind}.${name}`,
      shape,
      example,
    })),
  )
  const measured = facts.filter(({ shape }) => shape.quantity)

  // No part is endlessly large or small, and the sums of engineering are not made for one that is (common practice, no source).
  it.each(measured)('$path has a lower and an upper end', ({ shape }) => {
    expect(shape.allowed?.low).toBeDefined()
    // Only insulation has more ohms than that.
    expect(shape.allowed?.high).toBeLessThan(shape.quantity === 'resistance' ? 1e14 : 1e9)
  })

  const simple = measured.filter(({ path, example }) => {
    const [kind, fact] = path.split('.')
    return typeof factValue(read(`${kind} { ${fact}: ${example} }`).blocks, path) === 'number'
  })

  it.each(simple)('$path may be what the message says is allowed', ({ path, shape }) => {
    const { quantity = 'ratio', allowed = {} } = shape
    const [kind, fact] = path.split('.')
    for (const si of [allowed.low ?? 0, allowed.high ?? 0]) {
      const side = shape.choices ? (si < 0 ? ' port' : ' starboard') : ''
      const written = formatSi(Math.abs(si) * (shape.choices ? 1 : Math.sign(si)), quantity)
      const { problems } = read(`${kind} { ${fact}: ${written}${side} }`)
      expect(problems.filter(({ type }) => type === 'outside-allowed')).toEqual([])
    }
  })

  it.each(simple)('$path is refused beyond that', ({ path, shape }) => {
    const { quantity = 'ratio', allowed: { low = 0, high = 0 } = {} } = shape
    const [kind, fact] = path.split('.')
    for (const si of [high * 1.02 + 1e-9, ...(low > 0 ? [low * 0.98] : [])]) {
      const written = formatSi(Math.abs(si) * (shape.choices ? 1 : Math.sign(si)), quantity, 'metric', 9)
      const { blocks, problems } = read(`${kind} { ${fact}: ${written}${shape.choices ? ' starboard' : ''} }`)
      const told = problems.filter(({ type }) => type === 'outside-allowed' || type === 'not-this-value')
      expect({ value: factValue(blocks, path), told: told.length }).toEqual({ value: undefined, told: 1 })
    }
  })
})

describe('a kind', () => {
  it.each(['constructor', '__proto__', 'toString', 'hasOwnProperty', ''])(
    '%j is none, though JavaScript objects have it',
    (name) => {
      expect(findKind(name)).toBeUndefined()
    },
  )

  it.each(Object.entries(vocabulary))('%s is found by the name it says it has', (name, kind) => {
    expect(kind.kind).toBe(name)
    expect(findKind(name)).toBe(kind)
  })

  // The compiler is the judge here: an unused expect-error is an error of its own.
  it('has only the facts it declares, with their own types', () => {
    const kind: FactValue<'coupling.kind'> = 'rigid'
    const length: FactValue<'seal.free-length'> = 0.148
    // @ts-expect-error no such kind of coupling
    const other: FactValue<'coupling.kind'> = 'loose'
    // @ts-expect-error no such fact
    const path: FactPath = 'seal.colour'
    const has = (p: string) =>
      Object.hasOwn(vocabulary[p.split('.')[0] as 'seal'].facts, p.split('.')[1] ?? '')
    expect([kind, other].map((word) => vocabulary.coupling.facts.kind.shape.choices?.includes(word))).toEqual(
      [true, false],
    )
    expect(length).toBeGreaterThan(0)
    expect(has(path)).toBe(false)
  })
})
