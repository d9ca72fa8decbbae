// What a finding says is the range of a fact, the fact may be: `70 %` of `-20 % to 70 %`, though 70 · 0.01 is more than 0.7 as a double.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { formatSi } from '../../server/src/quantity/format.ts'
import { blockKinds } from '../../server/src/vocabulary/index.ts'
import { findingsOf } from '../checks/marks.ts'

const isOutside = (kind: string, name: string, value: string): boolean =>
  findingsOf(`${kind} made {\n  ${name}: ${value}\n}\n`, allChecks).findings.some(
    ({ check }) => check === 'job/value-outside',
  )

const ends = blockKinds.flatMap(({ kind, facts }) =>
  Object.entries(facts).flatMap(([name, { shape, example }]) => {
    const { allowed, quantity } = shape
    // An amount alone, not one of several or beside a word.
    if (!allowed || !quantity || allowed.above || !/^-?[\d.]+ \S+$/.test(example)) return []
    return [allowed.low, allowed.high].flatMap((end) =>
      end === undefined ? [] : [{ fact: `${kind}.${name}`, kind, name, value: formatSi(end, quantity), end }],
    )
  }),
)

describe('the ends of a range', () => {
  it('are many', () => expect(ends.length).toBeGreaterThan(100))

  it.each(ends)('are in it: $fact, $value', ({ kind, name, value }) => {
    expect(isOutside(kind, name, value)).toBe(false)
  })

  it.each([
    ['hull', 'wake-fraction', '70.001 %'],
    ['hull', 'wake-fraction', '-20.001 %'],
    ['service', 'reserve', '95.001 %'],
  ])('%s.%s: %s is beyond', (kind, name, value) => {
    expect(isOutside(kind, name, value)).toBe(true)
  })
})
