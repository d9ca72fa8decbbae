// Signs and numbers as people type them, in haste too: none may move a value unseen. The language's own rules.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { findingsOf } from '../checks/marks.ts'
import { factValue, read } from '../job/meaning.ts'

const diameter = (value: string): unknown =>
  factValue(read(`shaft { diameter: ${value} }`).blocks, 'shaft.diameter')

/** Only what is said of reading: not what is missing, or odd about the size. */
const told = (text: string) =>
  findingsOf(text, allChecks).findings.filter(
    ({ check, severity }) =>
      severity === 'error' && check.startsWith('job/') && !/(fact|block)-missing$/.test(check),
  )
const checksOf = (text: string): readonly string[] => told(text).map(({ check }) => check)

describe('± in whatever way it is typed', () => {
  it.each(['±', '+/-', '+-', '+/−', '+−'])('35 mm %s 0.02 mm', (sign) => {
    for (const value of [`35 mm ${sign} 0.02 mm`, `35 mm ${sign}0.02 mm`, `35 mm${sign}0.02 mm`]) {
      const { nominal, low, high } = diameter(value) as Record<string, number>
      expect([nominal, low, high].map((si) => Math.round((si ?? 0) * 1e6))).toEqual([35000, 34980, 35020])
      expect(formatText(`diameter: ${value}`)).toBe(`diameter: ${value}\n`)
    }
  })

  it('is no sum where lengths are read', () => {
    const text = 'drive d { reading r { gaps: top 0.045 in +- 0.001 in, bottom 0.04 in, port 0.04 in } }'
    expect(factValue(read(text).blocks, 'd.r.gaps')).toBeUndefined()
    expect(told(text).map(({ message }) => message)).toEqual([
      'top 0.045 in +- 0.001 in is not allowed here.',
    ])
  })

  it.each(['35 mm -+ 0.02 mm', '35 mm -/+ 0.02 mm'])('%s is refused', (value) => {
    expect(diameter(value)).toBeUndefined()
    expect(checksOf(`shaft { diameter: ${value} }`)).not.toEqual([])
  })
})

describe('a sign that touches its number behind an amount', () => {
  it.each([
    ['20 mm +3/2 mm', 'Write + 3/2 mm for a sum, +3/-2 mm for limits.'],
    ['20 mm +3 mm', 'Write + 3 mm for a sum, +3/-0 mm for limits.'],
    ['20 mm +.5 mm', 'Write + .5 mm for a sum, +.5/-0 mm for limits.'],
    ['20 mm -2 mm', 'Write - 2 mm for a difference, +0/-2 mm for limits.'],
    ['20 mm +3', 'Write + 3 for a sum, +3/-0 for limits.'],
    ['20 mm +3 mm + 1 mm', 'Write + 3 mm + 1 mm for a sum.'],
    ['(20 mm +3 mm)', 'Write + 3 mm for a sum, +3/-0 mm for limits.'],
    ['2 * (20 mm -2 mm) + 1 mm', 'Write - 2 mm for a difference, +0/-2 mm for limits.'],
    ['seal.free-length -2 mm', 'Write - 2 mm for a difference, +0/-2 mm for limits.'],
  ])('%s is one finding, and no value', (value, todo) => {
    const text = `shaft { diameter: ${value} }`
    expect(diameter(value)).toBeUndefined()
    expect(told(text).map((finding) => [finding.check, finding.todo])).toEqual([['job/sign-touches', todo]])
    expect(formatText(text)).toBe(`${text}\n`)
  })

  it.each(['20 mm + 3 mm', '20 mm+3 mm', '20 mm+ 3 mm', '(20 mm + 3 mm)'])('%s is a sum', (value) => {
    expect(diameter(value)).toMatchObject({ nominal: expect.closeTo(0.023, 12) })
  })

  it('is one of the number where a place stands before it', () => {
    const text = 'drive d { reading r { offsets: top +0.06 mm, 90 deg -0.02 mm, 180 deg -0.05 mm } }'
    const offsets = factValue(read(text).blocks, 'd.r.offsets') as readonly { value: number }[]
    expect(offsets.map(({ value }) => value * 1e5)).toEqual([6, -2, -5].map((x) => expect.closeTo(x, 9)))
  })
})

describe('a number that begins with its point', () => {
  it.each([
    ['.5 in', 0.0127],
    ['-(.5 in - 1 in)', 0.0127],
    ['1.25 in - .75 in', 0.0127],
    ['5e-1 in', 0.0127],
    ['.05e1 in', 0.0127],
  ])('%s', (value, metres) => {
    expect(diameter(value)).toMatchObject({ nominal: expect.closeTo(metres, 12) })
    expect(formatText(`diameter: ${value}`)).toBe(`diameter: ${value}\n`)
  })

  it('has its place in limits too', () => {
    const of = (value: string) => factValue(read(`seal { compression: ${value} }`).blocks, 'seal.compression')
    expect(of('1 in +.1/-.05 in')).toMatchObject({ low: expect.closeTo(0.02413, 12) })
    expect(of('.5...75 in')).toMatchObject({
      low: expect.closeTo(0.0127, 12),
      high: expect.closeTo(0.01905, 12),
    })
    expect(of('24..29 mm')).toMatchObject({ low: 0.024, high: expect.closeTo(0.029, 12) })
  })

  it('is no second piece of a number or a word', () => {
    expect(diameter('35.2.5 mm')).toBeUndefined()
    expect(checksOf('shaft { diameter: 35.2.5 mm }')).toHaveLength(1)
    const bed = read('bed { thread: M16x1.5 }').blocks
    expect(factValue(bed, 'bed.thread')).toBe('M16x1.5')
  })
})

describe('a sign that shows as nothing is named', () => {
  it.each(['200B', '200E', '2060', '202E', '0000', '00AD'])('U+%s', (code) => {
    const sign = String.fromCodePoint(Number.parseInt(code, 16))
    for (const text of [`shaft { diameter: 35 mm${sign} }`, `shaft { diameter: ${sign}${sign}35 mm }`])
      expect(told(text)[0]?.message).toBe(`U+${code}, a sign that cannot be seen, cannot be read here.`)
    expect(told(`shaft { diameter: 35 mm ;${sign} }`)[0]?.message).toBe(`;U+${code} cannot be read here.`)
  })
})

// Unicode Character Database: U+061C turns the direction (Bidi_Control), the others are fillers and a blank (Default_Ignorable_Code_Point,
// White_Space). Two names that look alike must not be two.
describe('a sign that cannot be seen is told in a name', () => {
  it.each([
    '\u061C',
    '\u115F',
    '\u1160',
    '\u1680',
    '\u180E',
    '\u200B',
    '\u200F',
    '\u3164',
    '\uFFA0',
    '\uFEFF',
  ])('%j', (sign) => {
    expect(checksOf(`battery ho${sign}use { nominal: 96 V }`)).not.toEqual([])
  })

  it('and letters of other scripts are letters', () => {
    for (const name of ['maître', 'двигатель', 'モーター', '엔진', 'محرك'])
      expect(checksOf(`battery ${name} { nominal: 96 V }`)).toEqual([])
  })
})
