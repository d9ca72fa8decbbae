import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { marginTo, verdictOn } from '../../server/src/quantity/conformity.ts'

describe('verdictOn', () => {
  // ISO 14253-1: conformity is proved when the interval of the uncertainty lies inside the limits, non-conformity when it lies beyond one.
  it.each([
    [{ high: 0.1 }, { value: 0.06, uncertainty: 0.02 }, 'within'],
    [{ high: 0.1 }, { value: 0.08, uncertainty: 0.04 }, 'undecided'],
    [{ high: 0.1 }, { value: 0.14, uncertainty: 0.02 }, 'outside'],
    [{ low: 24, high: 29 }, { value: 27 }, 'within'],
    [{ low: 24, high: 29 }, { value: 18 }, 'outside'],
    [{ low: 24, high: 29 }, { value: 24.5, uncertainty: 1 }, 'undecided'],
    // Beyond the ends of a table: what carries at least 475 A may carry 500 A, but is not shown to.
    [{ low: 200 }, { value: 475, bound: 'at-least' }, 'within'],
    [{ low: 500 }, { value: 475, bound: 'at-least' }, 'outside'],
    [{ high: 500 }, { value: 475, bound: 'at-least' }, 'undecided'],
    [{ high: 400 }, { value: 475, bound: 'at-least' }, 'outside'],
    [{ low: 20 }, { value: 18, bound: 'less-than' }, 'outside'],
    [{ low: 10 }, { value: 18, bound: 'less-than' }, 'undecided'],
    [{ high: 20 }, { value: 18, bound: 'less-than' }, 'within'],
  ] as const)('of %o on %o is %s', (limit, measured, verdict) => {
    expect(verdictOn(limit, measured)).toBe(verdict)
  })
})

describe('marginTo', () => {
  it.each([
    [{ high: 0.1 }, { value: 0.06, uncertainty: 0.02 }, { size: 0.02, share: 0.2 }],
    [{ low: 200 }, { value: 150 }, { size: -50, share: -0.25 }],
    // Of a range, of half its width: in the middle it is all of it.
    [{ low: 24, high: 29 }, { value: 26.5 }, { size: 2.5, share: 1 }],
    [
      { low: 24, high: 29 },
      { value: 27, uncertainty: 1 },
      { size: 1, share: 0.4 },
    ],
  ] as const)('of %o to %o is %o', (limit, measured, margin) => {
    const found = marginTo(limit, measured)
    expect(found?.size).toBeCloseTo(margin.size, 12)
    expect(found?.share).toBeCloseTo(margin.share, 12)
  })

  it('has no share of a limit of zero, and is unknown without a limit or where a bound leaves it open', () => {
    expect(marginTo({ high: 0 }, { value: -1 })).toEqual({ size: 1 })
    expect(marginTo({ low: 3, high: 3 }, { value: 3 })).toEqual({ size: 0 })
    expect(marginTo({}, { value: 1 })).toBeUndefined()
    expect(marginTo({ nominal: 3 }, { value: 1 })).toBeUndefined()
    expect(marginTo({ high: 500 }, { value: 475, bound: 'at-least' })).toBeUndefined()
    expect(marginTo({ low: 10 }, { value: 18, bound: 'less-than' })).toBeUndefined()
    expect(marginTo({ low: 500 }, { value: 475, bound: 'at-least' })?.size).toBe(-25)
    expect(marginTo({ low: 20 }, { value: 18, bound: 'less-than' })?.size).toBe(-2)
  })

  const number = fc.double({ min: -1e3, max: 1e3, noNaN: true })
  const measured = fc.record({ value: number, uncertainty: fc.double({ min: 0, max: 100, noNaN: true }) })
  const limits = fc
    .tuple(fc.option(number, { nil: undefined }), fc.option(number, { nil: undefined }))
    .map(([a, b]) =>
      a !== undefined && b !== undefined
        ? { low: Math.min(a, b), high: Math.max(a, b) }
        : { ...(a !== undefined && { low: a }), ...(b !== undefined && { high: b }) },
    )

  it('is positive exactly where the verdict is within (definition)', () => {
    fc.assert(
      fc.property(limits, measured, (limit, one) => {
        const margin = marginTo(limit, one)
        if (!margin || Math.abs(margin.size) < 1e-5) return
        expect(verdictOn(limit, one) === 'within').toBe(margin.size > 0)
      }),
    )
  })

  it('turns round with its limits, and shrinks as the uncertainty grows', () => {
    fc.assert(
      fc.property(limits, measured, (limit, one) => {
        const turned = {
          ...(limit.high !== undefined && { low: -limit.high }),
          ...(limit.low !== undefined && { high: -limit.low }),
        }
        const margin = marginTo(limit, one)
        expect(marginTo(turned, { ...one, value: -one.value })?.size).toBe(margin?.size)
        if (!margin) return
        const wider = marginTo(limit, { ...one, uncertainty: one.uncertainty + 1 })
        expect(wider?.size).toBeCloseTo(margin.size - 1, 9)
      }),
    )
  })
})
