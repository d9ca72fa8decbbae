// Limits of a flexible coupling by its speed, from the text of a job. General industry alignment tolerance table for short flexible couplings,
// acceptable: 1500 rpm 0.09 mm and 0.07 mm on 100 mm; 6000 rpm 0.03 mm and 0.03 mm on 100 mm.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { blockIn } from '../job-text.ts'

const job = (
  speed: string,
  { system = 'metric', gear = '' } = {},
) => `job "sp" { vessel: "x"  show-in: ${system} }
drive main {
  coupling { kind: flexible  pilot: no  flange-diameter: 125 mm  gauge-diameter: 110 mm }
  motor m { power: 15 kW  speed: ${speed} }
  ${gear}
  reading a {
    taken: 2026-03-04
    gauge: 0.01 mm
    gaps: top 1.84 mm, starboard 1.80 mm, bottom 1.76 mm, port 1.80 mm
    offsets: top 0.08 mm, starboard 0 mm, bottom -0.08 mm, port 0 mm
  }
}
`

function allowed(text: string) {
  const { block, lookup } = blockIn(text, 'main.a')
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  const { gapVariation, offset, assumptions } = outcome.value
  if (!offset) throw new Error('no offset')
  return { gap: gapVariation.limit, offset: offset.limit, assumptions: assumptions.join('\n') }
}

describe('what the speed allows', () => {
  it('is said on the circle that is read', () => {
    const { gap, assumptions } = allowed(job('1500 rpm'))
    // 0.07 mm on 100 mm, on 110 mm.
    expect(gap).toBeCloseTo(0.077e-3, 9)
    expect(assumptions).toContain(
      'no limit for gap variation is stated: 0.077 mm is allowed on the gauge circle of 110 mm (short flexible couplings at 1500 rpm, general industry table), stricter than 0.001 of the diameter',
    )
    expect(assumptions).toContain('no limit for offset is stated: 0.09 mm is allowed')
  })

  it('is said in inches with digits that a gauge has, where the job is in inches', () => {
    const { assumptions } = allowed(job('1500 rpm', { system: 'inch' }))
    // 0.077 mm is 0.00303 in, 0.09 mm is 0.00354 in.
    expect(assumptions).toContain('0.00303 in is allowed on the gauge circle of 4.331 in')
    expect(assumptions).toMatch(/no limit for offset is stated: 0\.00354 in is allowed/)
    expect(assumptions).not.toMatch(/0\.\d{6}/)
  })

  it('ends at the last row, which goes on and is named', () => {
    const [last, beyond] = [allowed(job('6000 rpm')), allowed(job('6001 rpm'))]
    expect([last.gap, last.offset]).toEqual([0.033e-3, 0.03e-3].map((limit) => expect.closeTo(limit, 9)))
    expect([beyond.gap, beyond.offset]).toEqual([last.gap, last.offset])
    const words = 'the table of speeds ends at 6000 rpm: its last row is used, and the maker may allow less'
    expect(last.assumptions).not.toContain(words)
    expect(beyond.assumptions.split(words)).toHaveLength(2)
  })

  it('of a nominal speed is its own row, whatever unit it goes through', () => {
    for (const [speed, offset] of [
      [750, 0.19],
      [1500, 0.09],
      [3000, 0.06],
      [6000, 0.03],
    ] as const) {
      expect(allowed(job(`${speed} rpm`)).offset).toBeCloseTo(offset / 1000, 9)
      expect(allowed(job(`${speed * 2.5} rpm`, { gear: 'gear { ratio: 2.5 }' })).offset).toBeCloseTo(
        offset / 1000,
        9,
      )
    }
  })

  // Common practice, no source: a faster coupling is never allowed more.
  it('is never looser at a higher speed', () => {
    const speed = fc.double({ min: 1, max: 50_000, noNaN: true }).map((rpm) => Number(rpm.toPrecision(6)))
    const ratio = fc.constantFrom('', 'gear { ratio: 2.5 }', 'gear { ratio: 100 }', 'gear { ratio: 0.5 }')
    fc.assert(
      fc.property(speed, speed, ratio, (a, b, gear) => {
        const slow = allowed(job(`${Math.min(a, b)} rpm`, { gear }))
        const fast = allowed(job(`${Math.max(a, b)} rpm`, { gear }))
        expect(fast.gap).toBeLessThanOrEqual(slow.gap)
        expect(fast.offset).toBeLessThanOrEqual(slow.offset)
      }),
    )
  })
})

describe('what is allowed where the job does not say', () => {
  const assumed = (coupling: string, more = '') => {
    const text = job('7000 rpm')
      .replace('coupling { kind: flexible  pilot: no ', `coupling { ${coupling} `)
      .replace(/ {2}motor m .*\n/, more)
    return allowed(text)
  }
  const fast = '  motor m { power: 15 kW  speed: 7000 rpm }\n'

  // 0.001 in per inch of diameter is a slope of 1 mrad: on 110 mm it shows 0.11 mm, whatever the flange.
  it('is a slope, so that a smaller circle shows less of it', () => {
    expect(assumed('kind: rigid  offset: max 0.15 mm').gap).toBeCloseTo(0.11e-3, 9)
  })

  it('names where the table of speeds ends, also where only the offset goes by it', () => {
    expect(assumed('kind: flexible  gap-variation: max 0.10 mm', fast).assumptions).toContain(
      'the table of speeds ends at 6000 rpm',
    )
  })

  it('names a speed that is not known, and the circle that a stated figure holds on', () => {
    expect(assumed('kind: flexible').assumptions).toContain('the speed of the flexible coupling is not known')
    expect(assumed('kind: flexible', fast).assumptions).not.toContain('is not known')
    const own = assumed('kind: flexible  gap-variation: max 0.10 mm  offset: max 0.15 mm').assumptions
    expect(own).toContain('the limit for gap variation applies where the gauge goes in, on 110 mm')
  })
})
