// What is told to be allowed is never more than is allowed (common practice, no source).
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { effectOf } from '../../../server/src/areas/alignment/plans/move-effect.ts'
import { correctionText } from '../../../server/src/areas/alignment/plans/words.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { formatLimit } from '../../../server/src/quantity/format-measures.ts'
import { findingsOf } from '../../checks/marks.ts'
import { blockIn } from '../job-text.ts'

describe('a limit', () => {
  it.each([
    [0.1e-3, 'metric', '0.10 mm'],
    [0.125e-3, 'metric', '0.125 mm'], // 0.001 of a flange of 125 mm
    [(0.1 + 0.2) * 1e-3, 'metric', '0.30 mm'],
    [0.004 * 0.0254, 'inch', '0.0040 in'],
    [0.1e-3, 'inch', '0.00393 in'], // 0.1 / 25.4 = 0.003937
  ] as const)('of %d m is said in %s units as %s', (si, system, said) => {
    expect(formatLimit(si, system)).toBe(said)
  })

  it('is never said larger than it is, and at most by a thousandth of a millimetre smaller', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 0.01, noNaN: true }), (si) => {
        const said = Number.parseFloat(formatLimit(si, 'metric')) / 1000
        expect(said).toBeLessThanOrEqual(si + 1e-11)
        expect(said).toBeGreaterThan(si - 1e-6)
      }),
    )
  })
})

// A feeler of 0.005 in is 0.127 mm (NIST SP 811, B.8).
it('a gauge is said as it is, not as one that would be fine enough', () => {
  const { block, lookup } = blockIn(
    `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.005 in
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
  }
}
`,
    'main.dry-1',
  )
  const outcome = correctionOf(block, lookup)
  expect(outcome.ok && correctionText(outcome.value, 'metric')).toContain('a gauge step of 0.127 mm')
})

// 15 kW / 0.92 / 0.96 / 84 V ≈ 202.2 A (P = U · I); the length is one at which the drop lies a hair above what is allowed.
it('a drop that is above what is allowed reads as one that is', () => {
  const job = (drop: string) => `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: controller
    conductor: 95 mm2
    length: 2.5 m
    insulation: 105 degC
    drop: max ${drop} %
  }
}
`
  const told = (drop: string) =>
    findingsOf(job(drop), allChecks).findings.find(({ check }) => check === 'cable/voltage-drop')
  const found = Number.parseFloat(told('0.1')?.found ?? '')
  const close = told((found * 0.99999).toPrecision(9))
  expect(close).toBeDefined()
  expect(close?.limit).not.toBe(`at most ${close?.found}`)
})

it('turns and a length of one foot add up, in the effect of a move as in the log (M16: pitch 2 mm, ISO 261)', () => {
  const { block, lookup } = blockIn(
    `drive main {
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft { from-coupling: 180 mm  across: 0 mm }
  }
  move after dry-1 { done: 2026-03-04  aft: up 1 turn, up 0.3 mm }
}
`,
    'main.move',
  )
  expect(effectOf(block, lookup).feet[0]?.height).toBeCloseTo(0.0023, 9)
})
