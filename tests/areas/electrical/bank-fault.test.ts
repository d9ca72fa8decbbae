// What a short circuit at a battery draws: Ohm's law at its terminals; banks side by side add (ABYC-based interrupting-capacity note: six units
// of 2 400 A, 2 in series by 3, give 7 200 A).
import { describe, expect, it } from 'vitest'
import { bankShortCircuitCurrent } from '../../../server/src/areas/electrical/plans/bank-fault.ts'
import { blockIn } from '../job-text.ts'

const fault = (battery: string, more = '', to = 'controller') => {
  const { block, lookup } = blockIn(
    `battery house { ${battery} }
${more}
drive main {
  controller { }
  cable feed { from: house  to: ${to}  conductor: 95 mm2  length: 2 m  insulation: 105 degC }
}
`,
    'main.feed',
  )
  return bankShortCircuitCurrent(block, lookup)
}

describe('the short-circuit current of a battery', () => {
  it('is as its maker states it where no resistance is said', () => {
    expect(fault('nominal: 96 V  short-circuit-current: 8 kA')).toEqual({
      highest: 8000,
      lowest: 8000,
      notCounted: [],
      from: ['as house states it'],
      assumptions: [],
    })
  })

  // 108 V over 14 mΩ is 7714 A (Ohm's law): whichever is worse for a check counts.
  it.each([
    ['1 A', 1, 7714.286, '108 V over the internal resistance of house, 14 mohm'],
    ['4 kA', 4000, 7714.286, '108 V over the internal resistance of house, 14 mohm'],
    ['15 kA', 7714.286, 15_000, 'as house states it'],
    ['40 kA', 7714.286, 40_000, 'as house states it'],
  ])('is both where its resistance gives another: %s', (stated, lowest, highest, from) => {
    const found = fault(
      `nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm  short-circuit-current: ${stated}`,
    )
    expect(found?.lowest).toBeCloseTo(lowest, 3)
    expect(found?.highest).toBeCloseTo(highest, 3)
    expect(found?.from).toEqual([from])
  })

  it('else the high end of its window over its internal resistance', () => {
    expect(fault('nominal: 12 V  window: 10..12 V  internal-resistance: 5 mohm')?.highest).toBeCloseTo(
      2400,
      9,
    )
  })

  it('is taken on charge where the window is not said, and the words say so', () => {
    const found = fault('nominal: 12 V  internal-resistance: 5 mohm')
    expect(found?.highest).toBeCloseTo((1.25 * 12) / 0.005, 9)
    expect(found?.from[0]).toContain('1.25 times its nominal voltage')
  })

  it('cannot be told without either figure, or where one could not be read', () => {
    expect(fault('nominal: 12 V')).toBeUndefined()
    expect(fault('nominal: 12 V  internal-resistance: 5 bananas')).toBeUndefined()
  })

  it('of two banks that a cable joins is that of both, and at least that of one while the other is not known', () => {
    const other = (facts: string) => `battery bow { nominal: 12 V  ${facts} }`
    const house = 'nominal: 12 V  short-circuit-current: 2400 A'
    expect(fault(house, other('short-circuit-current: 4800 A'), 'bow')?.highest).toBe(7200)
    expect(fault(house, other(''), 'bow')).toMatchObject({
      highest: 2400,
      lowest: undefined,
      notCounted: ['bow'],
    })
    expect(fault('nominal: 12 V', other(''), 'bow')).toBeUndefined()
  })
})
