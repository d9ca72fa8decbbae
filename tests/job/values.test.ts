// How values are read. Conversions in the quantity floor's own tests; here the forms of the language.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import type { ProblemCheck } from '../../server/src/checks/check.ts'
import unresolved from '../../server/src/checks/job/unresolved.ts'
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
    ['1 in + 3 in / 2', 2.5 * 0.0254],
    ['6 in / 2 / 3 - 1 in / 4', 0.75 * 0.0254],
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
    ['"148 mm"', 'value-quoted'],
    ['"long"', 'not-a-number'],
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

  it.each([
    ['29..24 mm', '24..29 mm'],
    ['29 mm..24 mm', '24 mm..29 mm'],
    ['3 cm..24 mm', '24 mm..3 cm'],
    ['29 mm..24', '24..29 mm'],
  ])('%s, the wrong way round, are offered as %s', (written, meant) => {
    expect(wrong('seal', 'compression', written)).toMatchObject({
      type: 'not-this-value',
      expected: 'limits with the lower one first',
      nearest: meant,
    })
    expect(one('seal', 'compression', meant)).toBeDefined()
  })

  it.each([
    '26 mm +3/-2 kg',
    '26 +3/-2 kg',
    '26 mm ± 2 kg',
    '26 ± 2 kg',
    '24..29 kg',
    '24 kg..29 kg',
    'max 29 kg',
  ])('%s is said once to be of the wrong kind', (written) => {
    const { problems } = read(`seal { compression: ${written} }`)
    expect(problems.map(({ type }) => type)).toEqual(['wrong-kind'])
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

describe('a name that stands for another kind of block', () => {
  it('is said to be of that kind, and which was wanted', () => {
    const said = unresolved as ProblemCheck<'unresolved'>
    const problem = { type: 'unresolved', path: 'p', wanted: 'a battery or controller' } as const
    const { message, todo } = said.words({ ...problem, is: 'cable' }, 'p')
    expect(message).toBe('p is a cable, which cannot be used here.')
    expect(todo).toBe('Name a battery or controller.')
    expect(said.words(problem, 'p').message).toContain('Nothing here is called p.')
  })
})

describe('a value outside what is allowed', () => {
  const limit = (text: string) =>
    findingsOf(text, allChecks).findings.flatMap(({ check, limit }) =>
      check === 'job/value-outside' ? [limit] : [],
    )

  // What is allowed is given in the vocabulary; conversions: 1 in = 25.4 mm exactly (NIST SP 811, B.8), a circle has 360 degrees.
  it.each([
    ['seal { free-length: 3 m }', '0.001 m to 2 m'],
    ['seal { free-length: 300 in }', '0.0394 in to 78.74 in'],
    ['seal { free-length: -(3 mm) }', '1 mm to 2000 mm'],
    ['seal { free-length: 1 mm - 20 mm }', '1 mm to 2000 mm'],
    ['coupling { flange-diameter: 1e-300 mm }', '10 mm to 3000 mm'],
    ['coupling { flange-diameter: 100 mm  gap-variation: max 0 mm }', '0.001 mm to 10 mm'],
    ['coupling { flange-diameter: 100 mm  offset: max 0 thou }', '0.03937 thou to 393.7 thou'],
    ['coupling { flange-diameter: 100 mm  offset: -1..1 mm }', '0 mm to 10 mm'],
    ['coupling { flange-diameter: 100 mm  bolts: 4 x M10, 0 N·m }', '0.1 N·m to 100000 N·m'],
    ['drive d { reading r { taken: 2026-03-04  gauge: 1e-320 mm } }', '0.0001 mm to 1 mm'],
    ['shaft-log { clearance: 1e300 deg 1 mm }', '-360 deg to 360 deg'],
    ['shaft-log { clearance: 1e300 turn 1 mm, 1 deg 1 mm }', '-1 turn to 1 turn'],
    ['shaft-log { clearance: top 1 mm, port 2 m }', '0 m to 1 m'],
    ['drive d { bed { adjuster: shims  shims: 0.1, 1e9 mm } }', '0.001 mm to 100 mm'],
    ['drive d { bed { foot f { from-coupling: 1 m  across: 1e9 ft port } } }', '0 ft to 32.81 ft'],
    ['motor { power: 1 kW  speed: 1e99 rpm }', '1 rpm to 50000 rpm'],
    ['gear { ratio: 1e-300 }', '0.01 to 100'],
    ['gear { ratio: 2  efficiency: 120 % }', '1 % to 100 %'],
    ['battery { nominal: 96 V  window: 0..108 V }', '1 V to 1500 V'],
    ['cable c { conductor: 40 AWG }', '0.1 mm2 to 1000 mm2'],
  ])('%s: the limits are in the unit it was written in', (text, allowed) => {
    expect(limit(text)).toEqual([allowed])
  })

  it('without a unit of its own has its limits said in the units of the job', () => {
    const inches = (system: string) =>
      limit(`job "x" {\n  vessel: "y"\n  show-in: ${system}\n}
seal { free-length: 1 m  fitted-length: free-length * 3 }`)
    expect(inches('metric')).toEqual(['1 mm to 2 m'])
    expect(inches('inch')).toEqual(['0.0394 in to 78.74 in'])
  })

  it('is marked itself, where several stand in one fact', () => {
    const { problems } = read('shaft-log { clearance: top 1 mm, port 2 m, 1e9 deg 1 mm }')
    expect(problems.map(({ written }) => written)).toEqual(['2 m'])
  })
})
