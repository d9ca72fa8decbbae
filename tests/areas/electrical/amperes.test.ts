import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatCarried, formatLoad, formatLoading } from '../../../server/src/areas/common/amperes.ts'

// To the safe side: common practice, no source.
describe('amperes are said on the safe side', () => {
  it('a load rounded up, what can be carried rounded down', () => {
    expect([formatLoad(202.2), formatCarried(144.6)]).toEqual(['203 A', '144 A'])
    expect(formatLoading(202.2, 144.6)).toEqual({ current: '203 A', carries: '144 A' })
  })

  it('a whole number stays as it is, whatever it went through', () => {
    expect(formatLoad((0.1 + 0.2) * 100)).toBe('30 A')
    expect(formatCarried(1.1 * 1.1 * 100)).toBe('121 A')
    expect(formatCarried(0.57 * 100)).toBe('57 A')
  })

  it('a load that fits reads as one that fits', () => {
    expect(formatLoading(202.1, 202.3)).toEqual({ current: '202.1 A', carries: '202.3 A' })
  })

  it('a load to be multiplied by 1.25 gives the least fuse that is said beside it (arithmetic)', () => {
    const amps = fc.double({ min: 0.1, max: 5000, noNaN: true })
    const number = (said: string) => Number.parseFloat(said)
    fc.assert(
      fc.property(amps, (current) => {
        const product = 1.25 * number(formatLoad(current, 1))
        expect(formatLoad(product)).toBe(formatLoad(1.25 * current))
      }),
    )
  })

  it('what is said is never less than the load, nor more than can be carried', () => {
    const amps = fc.double({ min: 0.1, max: 5000, noNaN: true })
    fc.assert(
      fc.property(amps, amps, (current, carries) => {
        const said = formatLoading(current, carries)
        expect(Number.parseFloat(said.current)).toBeGreaterThanOrEqual(current * (1 - 1e-8))
        expect(Number.parseFloat(said.carries)).toBeLessThanOrEqual(carries * (1 + 1e-8))
      }),
    )
  })
})
