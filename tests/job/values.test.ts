// How values are read. Conversions in the quantity floor's own tests; here the forms of the language.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/checks/index.ts'
import { findingsOf } from '../checks/marks.ts'
import { factValue, read } from './meaning.ts'

const one = (block: string, fact: string, value: string): unknown =>
  factValue(read(`${block} { ${fact}: ${value} }`).blocks, `${block}.${fact}`)
const wrong = (block: string, fact: string, value: string) =>
  read(`${block} { ${fact}: ${value} }`).problems[0]
const length = (value: string): unknown => one('seal', 'free-length', value)

describe('a length', () => {
  // 1 in = 25.4 mm exactly (NIST SP 811, B.8).
  it.each([
    ['148 mm', 0.148],
    ['3/4 in', 0.75 * 0.0254],
    ['1-1/4 in', 1.25 * 0.0254],
    ['1 1/4 in', 1.25 * 0.0254],
    ['148 mm - 26 mm', 0.122],
    ['2 * 60 mm + 1 in', 0.1454],
    ['(1 in + 3 in) / 2', 0.0508],
    ['-(2 mm - 10 mm)', 0.008],
    ['1e2 mm', 0.1],
    ['6 in', 0.1524],
  ])('%s', (written, metres) => {
    expect(length(written)).toBeCloseTo(metres, 12)
  })

  it.each([
    ['148', 'no-unit'],
    ['3 kg', 'wrong-kind'],
    ['3 mn', 'unknown-unit'],
    ['148 mm-26 mm', 'not-this-value'], // names may hold hyphens, so a minus has a space before it
    ['1/0 mm', 'not-a-number'],
    ['1e999 mm', 'not-a-number'],
    ['3 mm + 1 kg', 'cannot-combine'],
    ['3 mm / 0', 'divided-by-zero'],
    ['3 mm * 2 mm', 'wrong-kind'],
    ['3 mm + 2', 'cannot-combine'],
    ['0 mm', 'outside-allowed'],
    ['-3 mm', 'outside-allowed'],
    ['35,2 mm', 'decimal-comma'],
    ['3 mm 4 mm', 'not-this-value'],
    ['3 mm, 4 mm', 'not-this-value'],
    ['"148 mm"', 'not-a-number'],
    ['2026-03-04', 'not-a-number'],
  ])('%s is refused as %s', (written, type) => {
    expect(wrong('seal', 'free-length', written)?.type).toBe(type)
  })
})

describe('limits', () => {
  it.each([
    ['26 mm +3/-2 mm', { nominal: 0.026, low: 0.024, high: 0.029 }],
    ['26 +3/-2 mm', { nominal: 0.026, low: 0.024, high: 0.029 }],
    ['26 mm -2/+3 mm', { nominal: 0.026, low: 0.024, high: 0.029 }],
    ['26 mm ± 2 mm', { nominal: 0.026, low: 0.024, high: 0.028 }],
    ['26 mm +/- 2 mm', { nominal: 0.026, low: 0.024, high: 0.028 }],
    ['24..29 mm', { low: 0.024, high: 0.029 }],
    ['24 mm..29 mm', { low: 0.024, high: 0.029 }],
    ['max 29 mm', { high: 0.029 }],
    ['min 24 mm', { low: 0.024 }],
    ['1 in +1/8/-1/16 in', { nominal: 0.0254, low: 0.0238125, high: 0.028575 }],
  ])('%s', (written, expected) => {
    const band = one('seal', 'compression', written) as Record<string, number>
    expect(Object.keys(band).sort()).toEqual(Object.keys(expected).sort())
    for (const [side, value] of Object.entries(expected)) expect(band[side]).toBeCloseTo(value, 12)
  })

  it('the wrong way round are refused', () => {
    expect(wrong('seal', 'compression', '29..24 mm')?.type).toBe('outside-allowed')
  })

  it('of a class are those of ISO 286: 35 mm h9 is 0/-62 µm (from memory)', () => {
    expect(one('shaft', 'diameter', '35 mm h9')).toEqual({
      nominal: 0.035,
      high: 0.035,
      low: expect.closeTo(0.034938, 9) as number,
    })
    expect(wrong('shaft', 'diameter', '35 mm q9')).toMatchObject({ type: 'unknown-fit', written: 'q9' })
  })
})

describe('places round the shaft', () => {
  const angles = (value: string) =>
    (one('shaft-log', 'clearance', value) as { angle: number }[]).map(({ angle }) => (angle * 180) / Math.PI)

  it('are words or degrees clockwise from top looking forward', () => {
    const words = angles('top 1 mm, starboard 1 mm, bottom 1 mm, port 1 mm')
    expect(words).toEqual(angles('0 deg 1 mm, 90 deg 1 mm, 180 deg 1 mm, 270 deg 1 mm'))
  })
})

describe('a date', () => {
  // ISO 8601 and the Gregorian calendar: 2028 is a leap year, 2026 and 2100 are not.
  it.each(['2026-03-04', '2028-02-29', '2026-12-31T23:59', '2026-03-04T14:30:00+01:00'])(
    '%s is one',
    (text) => {
      const taken = read(`drive d { reading r { taken: ${text} } }`).problems.map(({ type }) => type)
      expect(taken).not.toContain('no-such-date')
    },
  )

  it.each(['2026-02-29', '2100-02-29', '2026-13-01', '2026-00-10', '2026-04-31', '2026-03-04T25:00'])(
    '%s is none',
    (text) => {
      const taken = read(`drive d { reading r { taken: ${text} } }`).problems.map(({ type }) => type)
      expect(taken).toContain('no-such-date')
    },
  )
})

describe('show-in', () => {
  const message = (system: string) =>
    findingsOf(
      `job "x" {\n  vessel: "y"\n  show-in: ${system}\n}\nseal { free-length: 3 m }`,
      allChecks,
    ).findings.find(({ check }) => check === 'job/value-outside')?.limit

  it('decides the units that results are shown in', () => {
    expect(message('metric')).toContain('2 m')
    // 2 m = 78.74 in: 1 in = 25.4 mm exactly (NIST SP 811, B.8).
    expect(message('inch')).toContain('78.74 in')
  })
})
