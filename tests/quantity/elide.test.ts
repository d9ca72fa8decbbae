// What a message repeats of a file can be read in a sentence: common practice, no source.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { elide } from '../../server/src/quantity/elide.ts'
import { findingsOf } from '../checks/marks.ts'

describe('what a file says, repeated', () => {
  it('is whole up to 40 characters', () => {
    expect(elide('x'.repeat(40))).toBe('x'.repeat(40))
  })

  it('is cut in the middle beyond that', () => {
    expect(elide(`${'a'.repeat(500_000)}${'b'.repeat(500_000)}`)).toBe(`${'a'.repeat(24)}…${'b'.repeat(15)}`)
  })

  it('is never long, and never half a sign', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        expect(elide(text).length).toBeLessThanOrEqual(40)
        expect(elide(text).isWellFormed()).toBe(true)
      }),
    )
  })

  const long = 'x'.repeat(100_000)
  it.each([
    `seal { free-length: ${long} }`,
    `seal { free-length: 1 ${long} }`,
    `seal { free-length: 1${'0'.repeat(100_000)} mm }`,
    `seal { free-length: 1${'0'.repeat(1000)} kg + 1 mm }`,
    `seal { ${long}: 1 mm }`,
    `seal { ${long} }`,
    `${long} { }`,
    `shaft { diameter: 35 mm ${long} }`,
    `coupling { kind: ${long} }`,
    `job "x" { vessel: ${long} }`,
    `cable c { from: ${long} }`,
    `cable c { conductor: ${'1'.repeat(1000)} AWG }`,
    `seal { like: ${long} }`,
    `use "${long}"`,
    `${long} ;`,
    `seal { free-length: 1${'0'.repeat(1000)},2 mm }`,
    `concession ${long} { on: ${long} reason: "" granted-by: "${long}" until: 2020-01-01 }`,
    `concession seal/shaft-size-differs { on: ${long} reason: "x" granted-by: "y" until: 2020-01-01 }`,
    `seal ${long} { }\nseal ${long} { }`,
    `seal ${long} {`,
    `seal { free-length: 1 mm; free-length: 2 mm } ${';'.repeat(1000)}`,
  ])('makes no message long: %.30s', (text) => {
    const { findings } = findingsOf(text, allChecks)
    expect(findings.length).toBeGreaterThan(0)
    for (const { message, todo, found = '', limit = '' } of findings)
      for (const words of [message, todo, found, limit]) expect(words.length).toBeLessThan(400)
  })

  it('is whole in what a fix writes', () => {
    const number = `1${'0'.repeat(80)}`
    const { findings } = findingsOf(`seal { free-length: ${number},2 mm }`, allChecks)
    const data = findings.flatMap(({ check, data }) => (check === 'job/decimal-comma' ? [data] : []))
    expect(data).toEqual([{ replace: `${number}.2 mm` }])
  })
})
