// A chain of references may be as long as a person, or a script, makes it: it is followed, or a finding says where it is not.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { findingsOf } from '../checks/marks.ts'
import { factValue, read } from './meaning.ts'

const times = (count: number, of: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => of(i)).join('\n')

const checksOf = (text: string) =>
  new Set(
    findingsOf(text, allChecks)
      .findings.map(({ check }) => check)
      .filter((id) => !id.startsWith('caution')),
  )

describe('a chain of 2,000', () => {
  const count = 2000
  const job = 'job "Long" { vessel: "Chain 1" }\n'
  const rows: Readonly<
    Record<string, { readonly first: string; readonly next: (i: number, of: number) => string }>
  > = {
    'parts that are like the one before': {
      first: 'propeller d0 { diameter: 400 mm }',
      next: (i, of) => `propeller d${i} { like: d${of} }`,
    },
    'sums of the one before': {
      first: 'shaft d0 { length: 2 m }',
      next: (i, of) => `shaft d${i} { length: d${of}.length + 1 mm }`,
    },
  }
  it.each(Object.entries(rows))(
    '%s says the same in whatever order it is written',
    (_what, { first, next }) => {
      const onwards = `${job}${first}\n${times(count, (i) => next(i + 1, i))}`
      const backwards = `${job}${times(count, (i) => next(count - i, count - i - 1))}\n${first}`
      expect(checksOf(backwards)).toEqual(checksOf(onwards))
      expect(checksOf(onwards)).not.toContain('job/refers-to-itself')
      expect(checksOf(onwards)).not.toContain('job/source-unread')
    },
  )

  it('gives the last the value of the first', () => {
    const { blocks } = read(
      `${times(count, (i) => `shaft s${i} { length: s${i + 1}.length + 1 mm }`)}\nshaft s${count} { length: 1 m }`,
    )
    expect(factValue(blocks, 's0.length')).toBeCloseTo(3, 9)
  })

  it('that closes is a circle at each of its links', () => {
    const { problems } = read(
      times(count, (i) => `shaft s${i} { length: s${(i + 1) % count}.length + 1 mm }`),
    )
    expect(problems.filter(({ type }) => type === 'refers-to-itself')).toHaveLength(count)
  })
})

it('the stack has room for sections that each go as deep as they may', () => {
  const deep = (of: string) => `${'('.repeat(50)}1 mm + ${of}${')'.repeat(50)}`
  const section = (i: number) =>
    `drive d${i} {\n${times(31, (k) => `shaft s${k} { length: ${k < 30 ? deep(`s${k + 1}.length`) : deep(`d${(i + 1) % 200}.s0.length`)} }`)}\n}`
  const { problems } = read(times(200, section))
  expect(problems.some(({ type }) => type === 'refers-to-itself')).toBe(true)
})

it('of drives is followed as far as anybody means', () => {
  const drives = (count: number) =>
    `${times(count, (i) => `drive d${count - i} { like: d${count - i - 1} }`)}\ndrive d0 { motor { power: 15 kW } }`
  expect(read(drives(32)).problems.map(({ type }) => type)).not.toContain('chain-too-long')
  expect(read(drives(33)).problems).toMatchObject([{ type: 'chain-too-long', written: 'd32' }])
  const { problems } = read(drives(2000))
  expect(new Set(problems.map(({ type }) => type))).toEqual(new Set(['chain-too-long', 'source-unread']))
})

describe('a name of 12,000 segments', () => {
  const long = `${'main.'.repeat(12_000)}main`
  it.each([
    ['where a length is wanted', `drive main { shaft { length: ${long} } }`],
    ['where a block is wanted', `drive main { cable c { from: ${long} } }`],
    ['that a part is like', `drive main { shaft { like: ${long} } }`],
    ['that a drive is like', `drive main { like: ${long} }`],
    ['of a reading before a move', `drive main { move after ${long} { done: 2026-03-05 } }`],
  ])('is a finding at its place, %s', (_where, text) => {
    const found = findingsOf(text, allChecks).findings.filter(({ at: { section, span } }) =>
      section.text.slice(span.start, span.end).includes('main.main'),
    )
    expect(found.length).toBeGreaterThan(0)
  })
})
