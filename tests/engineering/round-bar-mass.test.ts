import { describe, expect, it } from 'vitest'
import { roundBarMass } from '../../server/src/engineering/round-bar-mass.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'

describe('the mass of a round bar', () => {
  it('is that of the tables for steel: 15.4 kg for each metre of 50 mm (EN 10060, from memory)', () => {
    expect(roundBarMass({ diameter: 0.05, length: 1, density: 7850 })).toBeCloseTo(15.4, 1)
  })

  it('needs a diameter, a length and a density', () => {
    const bar = { diameter: 0.05, length: 1, density: 7850 }
    for (const name of Object.keys(bar)) expect(() => roundBarMass({ ...bar, [name]: 0 })).toThrow(OutOfRange)
  })
})
