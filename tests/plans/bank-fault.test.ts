// What a short circuit at a battery draws: Ohm's law at its terminals; banks side by side add (ABYC-based interrupting-capacity note: six units
// of 2 400 A, 2 in series by 3, give 7 200 A).
import { describe, expect, it } from 'vitest'
import { bankFault } from '../../server/src/plans/bank-fault.ts'
import { blockIn } from './job-text.ts'

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
  return bankFault(block, lookup)
}

describe('the short-circuit current of a battery', () => {
  it('is as its maker states it, whatever its resistance would give', () => {
    expect(fault('nominal: 96 V  short-circuit-current: 8 kA  internal-resistance: 14 mohm')).toEqual({
      current: 8000,
      from: ['as house states it'],
    })
  })

  it('else the high end of its window over its internal resistance', () => {
    expect(fault('nominal: 12 V  window: 10..12 V  internal-resistance: 5 mohm')?.current).toBeCloseTo(
      2400,
      9,
    )
  })

  it('is taken on charge where the window is not said, and the words say so', () => {
    const found = fault('nominal: 12 V  internal-resistance: 5 mohm')
    expect(found?.current).toBeCloseTo((1.25 * 12) / 0.005, 9)
    expect(found?.from[0]).toContain('1.25 times its nominal voltage')
  })

  it('cannot be told without either figure, or where one could not be read', () => {
    expect(fault('nominal: 12 V')).toBeUndefined()
    expect(fault('nominal: 12 V  internal-resistance: 5 bananas')).toBeUndefined()
  })

  it('of two banks that a cable joins is that of both, and not known while one is not', () => {
    const other = (facts: string) => `battery bow { nominal: 12 V  ${facts} }`
    const house = 'nominal: 12 V  short-circuit-current: 2400 A'
    expect(fault(house, other('short-circuit-current: 4800 A'), 'bow')?.current).toBe(7200)
    expect(fault(house, other(''), 'bow')).toBeUndefined()
  })
})
