// What is written for people is a figure: never "Infinity", "NaN", or the last bits of a double. Common practice, no source.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatCarried, formatLoad, formatLoading } from '../../server/src/areas/common/amperes.ts'
import { formatAssumption } from '../../server/src/areas/electrical/plans/assumption-words.ts'
import { formatTo } from '../../server/src/editor/hints/converted-digits.ts'
import { conductorResistance } from '../../server/src/engineering/electrical/conductor.ts'
import { inRange, positive, whole } from '../../server/src/engineering/guard.ts'
import {
  formatAbout,
  formatBand,
  formatBoth,
  formatFixed,
  formatNumber,
  formatSi,
} from '../../server/src/quantity/format.ts'
import {
  formatAmperes,
  formatGaugeStep,
  formatLength,
  formatLimit,
  formatOfLimit,
  formatRoom,
  formatRough,
  formatShare,
  formatShim,
  formatSlope,
  formatTogether,
  formatUncertain,
} from '../../server/src/quantity/format-measures.ts'
import { type Kind, kinds } from '../../server/src/quantity/kinds.ts'

/** Every double, those at the ends of what it holds among them. */
const any = fc.oneof(
  fc.double(),
  fc.constantFrom(1e308, -1e308, Number.MAX_VALUE, 5e-324, 1 / 0, -1 / 0, Number.NaN, 1e-7 * 1e6, 0.1 + 0.2),
)
const kind = fc.constantFrom(...(Object.keys(kinds) as Kind[]))
const system = fc.constantFrom('metric' as const, 'inch' as const)

const isPlain = (words: string): void => {
  expect(words).not.toMatch(/Infinity|NaN|undefined/)
}

describe('no format says Infinity or NaN', () => {
  it('of numbers and amounts of every kind', () => {
    fc.assert(
      fc.property(any, any, kind, system, fc.integer({ min: 1, max: 12 }), (a, b, of, in_, digits) => {
        for (const words of [
          formatNumber(a, digits),
          formatFixed(a, Math.min(digits, 6)),
          formatSi(a, of, in_, digits),
          formatBoth(a, of, in_, digits),
          formatAbout(a, of, in_),
          formatBand({ low: a, high: b }, of, in_),
        ])
          isPlain(words)
      }),
      { numRuns: 3000 },
    )
  })

  it('of what a sentence says', () => {
    fc.assert(
      fc.property(any, any, system, (a, b, in_) => {
        for (const words of [
          formatLength(a, in_),
          formatSlope(a),
          formatLimit(a, in_),
          formatOfLimit(a, b, in_),
          formatGaugeStep(a, in_),
          formatShim(a, in_),
          formatRough(a, in_),
          formatRoom(a, in_),
          formatTogether([a, b], in_, ' → '),
          formatUncertain({ value: a, standard: Math.abs(b) }, in_),
          formatAmperes(a, 1),
          formatShare(a),
          formatLoad(a),
          formatCarried(a),
          ...Object.values(formatLoading(a, b)),
        ])
          isPlain(words)
      }),
      { numRuns: 2000 },
    )
  })

  it('of an amount in the units of the other system', () => {
    fc.assert(
      fc.property(any, kind, system, fc.constantFrom(0, 1e-300, 0.01, 1e300), (a, of, in_, step) =>
        isPlain(formatTo(a, of, in_, step)),
      ),
      { numRuns: 1000 },
    )
    expect(formatTo(1e308, 'mass', 'inch', 0)).toBe('over 1e308 lb')
  })
})

describe('no figure has the last bits of a double', () => {
  const refusal = (work: () => unknown): string => {
    try {
      work()
    } catch (error) {
      return (error as Error).message
    }
    return ''
  }

  it('where a number is refused', () => {
    fc.assert(
      fc.property(any, (n) => {
        for (const work of [
          () => inRange('it', n, 0.1, 0.3),
          () => positive('it', n),
          () => whole('it', n, 1, 3),
        ]) {
          const words = refusal(work)
          isPlain(words)
          for (const figure of words.match(/\d[\d.]*/g) ?? [])
            expect(figure.replace('.', '').replace(/^0+/, '').length, words).toBeLessThanOrEqual(9)
        }
      }),
    )
  })

  it('0.1 mm² through m² is 0.1 mm²', () => {
    const { assumptions } = conductorResistance({ section: { system: 'metric', mm2: 1e-7 * 1e6 } })
    expect(assumptions.map(formatAssumption).join()).toContain('no IEC 60228 row for 0.1 mm²')
  })
})
