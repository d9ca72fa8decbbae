import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inParallel, inSeries, type Unit } from '../../../server/src/engineering/electrical/bank.ts'
import { faultCurrents, solveNetwork } from '../../../server/src/engineering/electrical/dc-network.ts'
import { faultCurrent } from '../../../server/src/engineering/electrical/fault-current.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'
import { near, relative, solved } from './network-helpers.ts'
import { asPrinted, badNumbers, exactly } from './outside.ts'

const fault = ({ emf, resistance }: Unit) => faultCurrent({ voltage: emf, internalResistance: resistance })

describe('published examples', () => {
  it('four cells of 0.75 mΩ and three jumpers of 0.25 mΩ, 14 V (off-road electrical forum)', () => {
    const cell = { emf: 3.5, resistance: 0.00075, capacity: 360_000 }
    exactly(fault(inSeries([cell, cell, cell, cell], 3 * 0.00025)), 14 / 0.00375)
    asPrinted(fault(cell), '4667')
  })

  it('six 6 V units of 2 400 A each, two in series, three strings: 12 V, 7 200 A (ABYC-based interrupting-capacity note)', () => {
    const unit = { emf: 6, resistance: 6 / 2400, capacity: 225 * 3600 }
    const string = inSeries([unit, unit])
    const bank = inParallel([string, string, string])
    exactly(fault(bank), 7200)
    exactly(bank.emf, 12)
    exactly(bank.capacity, 3 * 225 * 3600)
  })
})

const anyUnit: fc.Arbitrary<Unit> = fc.record({
  emf: fc.double({ min: 2, max: 120, noNaN: true }),
  resistance: fc.double({ min: 1e-4, max: 0.1, noNaN: true }),
  capacity: fc.double({ min: 1e4, max: 1e6, noNaN: true }),
})
const anyUnits = fc.array(anyUnit, { minLength: 1, maxLength: 5 })

it('strings side by side are what the network says of them, circulating currents too', () => {
  fc.assert(
    fc.property(anyUnits, (strings) => {
      const sources = strings.map(({ emf, resistance }) => ({
        negative: '-',
        positive: '+',
        emf,
        resistance,
      }))
      const bank = inParallel(strings)
      const open = solved({ links: [], sources, draws: [] })
      const most = Math.max(1, ...open.sourceCurrents.map(Math.abs))
      bank.circulating.forEach((amps, i) => {
        near(amps, open.sourceCurrents[i] ?? Number.NaN, 1e-9 * most)
      })
      relative(bank.emf, open.voltages.get('+') ?? Number.NaN, 1e-9)
      relative(fault(bank), faultCurrents({ links: [], sources }, [['+', '-']])[0] ?? Number.NaN, 1e-9)
    }),
  )
})

it('units in a row are what the network says of them', () => {
  fc.assert(
    fc.property(anyUnits, (units) => {
      const sources = units.map(({ emf, resistance }, i) => ({
        negative: `${i}`,
        positive: `${i + 1}`,
        emf,
        resistance,
      }))
      const string = inSeries(units)
      const ends = [`${units.length}`, '0'] as const
      relative(fault(string), faultCurrents({ links: [], sources }, [ends])[0] ?? Number.NaN, 1e-9)
      expect(solveNetwork({ links: [], sources, draws: [] }).outcome).toBe('solved')
      expect(string.capacity).toBe(Math.min(...units.map(({ capacity }) => capacity)))
    }),
  )
})

it('refuses no unit, and figures that are none', () => {
  expect(() => inSeries([])).toThrow(OutOfRange)
  expect(() => inParallel([])).toThrow(OutOfRange)
  const unit = { emf: 12, resistance: 0.005, capacity: 36e4 }
  for (const bad of badNumbers)
    for (const key of ['emf', 'resistance', 'capacity']) {
      expect(() => inSeries([{ ...unit, [key]: bad }])).toThrow(OutOfRange)
      expect(() => inParallel([unit, { ...unit, [key]: bad }])).toThrow(OutOfRange)
    }
})
