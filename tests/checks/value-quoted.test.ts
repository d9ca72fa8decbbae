// A value in quotes is a text: it is said so, and the fix takes the quotes off. The language's own rule.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { findingsOf } from './marks.ts'
import { applied, fixed, offersOf } from './offers.ts'

const errorsOf = (text: string) =>
  findingsOf(text, allChecks).findings.flatMap(({ check, severity }) => (severity === 'error' ? [check] : []))

describe('a value in quotes', () => {
  it.each([
    'motor x { power: "15 kW" }',
    'motor x { power-factor: "0.9" }',
    'battery x { window: "84..108 V" }',
    'coupling x { gap-variation: "max 0.10 mm" }',
    'coupling x { gap-variation: max "0.10 mm" }',
    'coupling x { kind: "rigid"  pilot: no }',
    'bed x { shims: "0.05 mm, 0.1 mm" }',
    'drive d { reading r { taken: "2026-03-04" } }',
    'drive d { reading r { gaps: top "1 mm", starboard 1 mm, port 1 mm } }',
    'gear a { ratio: 2 }\ngear x { like: "a" }',
    'battery house { nominal: 96 V }\ndrive d { battery: "house" }',
    'shaft x { length: "2 * (1 m + 20 mm)" }',
  ])('is one finding, and its fix takes the quotes off: %s', (text) => {
    expect(errorsOf(text)).toEqual(['job/value-quoted'])
    const right = text.replaceAll('"', '')
    const offers = offersOf(text, 'job/value-quoted').offers
    expect(offers.map(({ document, fix }) => applied(document, fix))).toEqual([right])
    expect(errorsOf(right)).toEqual([])
  })

  it('shows its comma once the quotes are off', () => {
    expect(errorsOf('motor x { power: "15,5 kW" }')).toEqual(['job/value-quoted'])
    expect(errorsOf('motor x { power: 15,5 kW }')).toEqual(['job/decimal-comma'])
  })

  it.each([
    ['motor x { power: "much" }', 'job/number-unreadable'],
    ['coupling x { kind: "rigit" }', 'job/value-not-allowed'],
    ['motor x { power: "15 kW }', 'job/text-not-closed'],
  ])('is something else where no value is in them: %s', (text, check) => {
    expect(errorsOf(text)).toEqual([check])
  })

  it.each([
    'job "x" { vessel: "15 kW" }',
    'motor x { terminals: "1U1", V, W }',
    'bed x { thread: "M16" }',
    'coupling x { bolts: 4 x "3/8-16 UNC" class 8.8, 45 N·m }',
  ])('is no fault in a text: %s', (text) => {
    expect(errorsOf(text)).toEqual([])
  })
})

describe('a wire gauge without AWG', () => {
  it.each(['1/0', '4/0'])('%s is one finding, with one fix', (gauge) => {
    const text = `cable x { conductor: ${gauge} }`
    const [finding, ...more] = findingsOf(text, allChecks).findings.filter(
      ({ severity }) => severity === 'error',
    )
    expect(more).toEqual([])
    expect(finding).toMatchObject({
      check: 'job/unit-missing',
      message: `${gauge} is a wire gauge, but AWG is missing.`,
      todo: `Write ${gauge} AWG.`,
    })
    expect(fixed(text, 'job/unit-missing', `Write ${gauge} AWG`)).toBe(`cable x { conductor: ${gauge} AWG }`)
  })

  it('is no gauge where none goes by it', () => {
    expect(errorsOf('cable x { conductor: 5/0 }')).toEqual(['job/number-unreadable'])
  })
})
