// A thinner conductor, a hotter place, more conductors together, or a bigger fuse never gets a milder verdict, however far it leaves the tables
// (33 CFR 183.425 Table 5, ISO 13297 Table A.1, IEC 60228, IEC 60269). Refused, as outside what the language allows, counts as an error.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

interface Cable {
  readonly conductor: string
  readonly insulation?: string
  readonly bundled?: number
  readonly place?: string
  readonly rating?: string
  readonly current?: string
}

const job = ({
  conductor,
  insulation = '105 degC',
  bundled = 2,
  place = 'machinery-space',
  rating = '20 A',
  current = '10 A',
}: Cable) => `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: controller
    conductor: ${conductor}
    length: 1 m
    insulation: ${insulation}
    place: ${place}
    bundled: ${bundled}
    design-current: ${current}
  }
  protection fuse { rating: ${rating}  in: feed }
}
`

const strictness = { error: 3, warning: 2, information: 1 } as const
const found = (cable: Cable) =>
  findingsOf(job(cable), allChecks).findings.filter(({ check }) => !check.startsWith('caution/'))

/** How strict the verdict is on the size of the cable, on its drop and on its fuse: 3 is an error, 0 a pass. A refused value is an error in each. */
const verdicts = (cable: Cable): readonly number[] => {
  const all = found(cable)
  return [
    ['cable/undersized', 'cable/below-smallest'],
    ['cable/voltage-drop'],
    ['protection/above-cable'],
  ].map((ids) =>
    Math.max(
      0,
      ...all
        .filter(({ check }) => ids.includes(check) || check === 'job/value-outside')
        .map(({ severity }) => strictness[severity]),
    ),
  )
}

const neverMilder = (worse: Cable, better: Cable) => {
  const [strict, mild] = [verdicts(worse), verdicts(better)]
  for (const [i, verdict] of mild.entries()) expect(strict[i]).toBeGreaterThanOrEqual(verdict)
}

/** Sizes from far below the tables to far above them, most of them near an end. */
const mm2 = fc.oneof(
  fc.double({ min: 0.05, max: 3, noNaN: true }),
  fc.double({ min: 90, max: 1200, noNaN: true }),
  fc.constantFrom(0.1, 0.5, 0.7, 0.75, 0.8, 0.82, 0.83, 1, 1.5, 95, 107, 108, 120, 150, 151, 185, 240, 1000),
)
const gauges = ['4/0', '3/0', '2/0', '1/0', ...Array.from({ length: 40 }, (_, i) => String(i + 1))]
const gauge = fc.integer({ min: 0, max: gauges.length - 1 })
const current = fc.constantFrom('0.1 A', '2 A', '15 A', '20 A', '300 A', '500 A', '2000 A')
const rating = fc.oneof(
  fc.constantFrom('1 A', '6 A', '15 A', '20 A', '315 A', '630 A', '700 A', '1000 A', '20000 A'),
)
const laid = fc.record({ current, rating, place: fc.constantFrom('open', 'machinery-space') })
const sorted = (a: number, b: number): readonly [number, number] => [Math.min(a, b), Math.max(a, b)]

describe('leaving a table never makes a verdict milder', () => {
  it('a thinner conductor, mm²', () => {
    fc.assert(
      fc.property(mm2, mm2, laid, (a, b, cable) => {
        const [thin, thick] = sorted(a, b)
        // Above what the language allows a value is refused, which is no verdict on a thick conductor.
        fc.pre(thick <= 1000)
        neverMilder({ ...cable, conductor: `${thin} mm2` }, { ...cable, conductor: `${thick} mm2` })
      }),
      { numRuns: 150 },
    )
  })

  it('a thinner conductor, AWG', () => {
    fc.assert(
      fc.property(gauge, gauge, laid, (a, b, cable) => {
        const [thick, thin] = sorted(a, b)
        neverMilder(
          { ...cable, conductor: `${gauges[thin]} AWG` },
          { ...cable, conductor: `${gauges[thick]} AWG` },
        )
      }),
      { numRuns: 100 },
    )
  })

  it('insulation for less heat', () => {
    const degrees = fc.integer({ min: 20, max: 250 })
    fc.assert(
      fc.property(degrees, degrees, mm2, laid, (a, b, size, cable) => {
        const [low, high] = sorted(a, b)
        const conductor = `${size} mm2`
        // The drop is worked out at the temperature that the insulation allows, so hotter insulation drops more: not this law.
        const [strict, mild] = [low, high].map((c) =>
          verdicts({ ...cable, conductor, insulation: `${c} degC` }).filter((_, i) => i !== 1),
        )
        for (const [i, verdict] of (mild ?? []).entries()) expect(strict?.[i]).toBeGreaterThanOrEqual(verdict)
      }),
      { numRuns: 100 },
    )
  })

  it('more conductors together', () => {
    const count = fc.integer({ min: 1, max: 200 })
    fc.assert(
      fc.property(count, count, mm2, laid, (a, b, size, cable) => {
        const [few, many] = sorted(a, b)
        const conductor = `${size} mm2`
        neverMilder({ ...cable, conductor, bundled: many }, { ...cable, conductor, bundled: few })
      }),
      { numRuns: 100 },
    )
  })

  it('a bigger fuse, and a larger current', () => {
    const amps = fc.oneof(
      fc.double({ min: 0.1, max: 50, noNaN: true }),
      fc.double({ min: 50, max: 30_000, noNaN: true }),
    )
    fc.assert(
      fc.property(amps, amps, mm2, laid, (a, b, size, cable) => {
        const [less, more] = sorted(a, b)
        const conductor = `${size} mm2`
        neverMilder(
          { ...cable, conductor, rating: `${more} A` },
          { ...cable, conductor, rating: `${less} A` },
        )
        neverMilder(
          { ...cable, conductor, current: `${more} A` },
          { ...cable, conductor, current: `${less} A` },
        )
      }),
      { numRuns: 100 },
    )
  })
})

describe('below the tables', () => {
  const of = (cable: Cable, check: string) => found(cable).find((finding) => finding.check === check)

  // 18 AWG at 105 °C carries 20 A, in a machinery space 17 A (33 CFR 183.425 Table 5 and note 1): a thinner conductor less.
  it.each(['0.7 mm2', '0.75 mm2', '0.5 mm2', '20 AWG', '26 AWG'])(
    '%s is too thin for 203 A, and for a fuse of 315 A',
    (conductor) => {
      const cable = { conductor, current: '203 A', rating: '315 A' }
      expect(of(cable, 'cable/undersized')).toMatchObject({
        severity: 'error',
        message: 'The cable can carry less than 17 A but must carry 203 A.',
      })
      expect(of(cable, 'protection/above-cable')).toMatchObject({ severity: 'error' })
    },
  )

  it('what it can carry is not shown, and both checks say so', () => {
    const cable = { conductor: '0.75 mm2', current: '5 A', rating: '6 A' }
    expect(of(cable, 'cable/undersized')).toMatchObject({
      severity: 'warning',
      message: 'No table shows that so thin a cable can carry 5 A.',
    })
    expect(of(cable, 'protection/above-cable')).toMatchObject({
      severity: 'warning',
      message: 'The rating is 6 A; no table shows what so thin a cable allows.',
    })
  })

  // 33 CFR 183.425(d) and (e): 16 AWG, 18 AWG in a sheath; ISO 10133:2012, 7.7: 1 mm², 0.75 mm² in a multicore sheath.
  it.each([
    ['1 mm2', undefined],
    ['0.99 mm2', 'warning'],
    ['0.75 mm2', 'warning'],
    ['0.74 mm2', 'error'],
    ['0.1 mm2', 'error'],
    ['16 AWG', undefined],
    ['17 AWG', 'warning'],
    ['18 AWG', 'warning'],
    ['19 AWG', 'error'],
    ['26 AWG', 'error'],
  ])('the smallest size: %s is %s', (conductor, severity) => {
    expect(of({ conductor, current: '1 A' }, 'cable/below-smallest')?.severity).toBe(severity)
  })
})

describe('above the tables', () => {
  // 150 mm² at 105 °C: 475 A, in a machinery space 403 A (ISO 13297 Table A.1, from memory; 33 CFR note 1).
  it('the largest row counts, and the finding says whose figure may be higher', () => {
    const of = (conductor: string, current: string) =>
      found({ conductor, current }).find(({ check }) => check === 'cable/undersized')
    expect(of('240 mm2', '403 A')).toBeUndefined()
    expect(of('240 mm2', '405 A')).toMatchObject({
      severity: 'error',
      message: 'The tables show at least 403 A for it, but it must carry 405 A.',
      todo: expect.stringContaining('ask the cable maker'),
    })
  })

  it('a load above every standard rating is not said to need a larger cable', () => {
    const text = job({ conductor: '150 mm2', current: '900 A', rating: '630 A' }).replace(
      'bundled: 2',
      'bundled: 2  parallel: 8',
    )
    const { findings } = findingsOf(text, allChecks)
    expect(findings.find(({ check }) => check === 'protection/below-load')?.todo).toContain('end at 630 A')
  })
})
