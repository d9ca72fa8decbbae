import fc from 'fast-check'
import { expect, it } from 'vitest'
import { runOutLimit } from '../../server/src/engineering/run-out.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'

// IEC 60072-1 in EASA AR100-2015/2020, tables 2-4, 2-10, 2-11.
it.each([
  ['shaft', 0.012, 35e-6],
  ['shaft', 0.018, 35e-6],
  ['shaft', 0.028, 40e-6],
  ['shaft', 0.038, 50e-6],
  ['shaft', 0.06, 60e-6],
  ['shaft', 0.2, 60e-6],
  ['register', 0.095, 80e-6],
  ['face', 0.13, 100e-6],
  ['register', 0.25, 125e-6],
  ['face', 0.9, 125e-6],
  ['shaft', 0.008, undefined],
  ['face', 0.03, undefined],
] as const)('the %s of %s m may run out by %s m', (where, diameter, limit) => {
  expect(runOutLimit({ where, diameter })).toBe(limit)
})

it('never falls with the diameter, and is none of no diameter', () => {
  const diameters = fc.double({ min: 0.05, max: 1, noNaN: true })
  fc.assert(
    fc.property(fc.constantFrom('shaft', 'face'), diameters, diameters, (where, a, b) => {
      const [small, large] = a < b ? [a, b] : [b, a]
      const limit = (diameter: number) => runOutLimit({ where, diameter }) ?? 0
      expect(limit(large)).toBeGreaterThanOrEqual(limit(small))
    }),
  )
  expect(() => runOutLimit({ where: 'shaft', diameter: 0 })).toThrow(OutOfRange)
})
