import { describe, expect, it } from 'vitest'
import { storedEnergy } from '../../../server/src/engineering/electrical/stored-energy.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'

describe('the energy of a capacitor', () => {
  it('is that of a public precharge calculator: 1000 µF at 800 V hold 320 J', () => {
    expect(storedEnergy({ capacitance: 1e-3, voltage: 800 })).toBeCloseTo(320, 9)
  })

  it('needs a capacitance and a voltage', () => {
    expect(() => storedEnergy({ capacitance: 0, voltage: 96 })).toThrow(OutOfRange)
    expect(() => storedEnergy({ capacitance: 1e-3, voltage: Number.NaN })).toThrow(OutOfRange)
  })
})
