// A finding can be accepted with reason, name and end date (concession: the ISO 9000 term); it is never left out.
import { describe, expect, it } from 'vitest'
import type { Finding } from '../../server/src/checks/check.ts'
import { allChecks } from '../../server/src/checks/index.ts'
import { findingsOf } from './marks.ts'

const fault = 'alignment/gauge-diameter-beyond-flange'
const boat = `drive main {
  coupling { flange-diameter: 100 mm  gauge-diameter: 110 mm }
}
drive port {
  coupling { flange-diameter: 100 mm  gauge-diameter: 110 mm }
}
`

const concession = (
  change: Partial<Record<'check' | 'on' | 'reason' | 'until' | 'by', string>> = {},
): string => {
  const facts = {
    on: change.on ?? 'main.coupling',
    reason: change.reason ?? '"gauge on an arm"',
    'granted-by': change.by ?? '"design office"',
    until: change.until ?? '2026-04-15',
  }
  const lines = Object.entries(facts).filter(([, value]) => value !== '')
  return `concession ${change.check ?? fault} {\n${lines.map(([name, value]) => `  ${name}: ${value}\n`).join('')}}\n`
}

const over = (text: string, today = '2026-03-10'): readonly Finding[] =>
  findingsOf(text, allChecks, { today }).findings
const severities = (findings: readonly Finding[], check = fault): readonly string[] =>
  findings.filter((finding) => finding.check === check).map((finding) => finding.severity)
const ids = (findings: readonly Finding[]): readonly string[] => findings.map((finding) => finding.check)

describe('a concession', () => {
  it('turns the finding of the block it names into information, and says who accepted it, why and until when', () => {
    const before = over(boat)
    const after = over(boat + concession())
    expect(severities(before)).toEqual(['error', 'error'])
    expect(severities(after)).toEqual(['information', 'error'])
    const message = before.find((finding) => finding.check === fault)?.message
    expect(after.find((finding) => finding.check === fault)?.message).toBe(
      `${message} Accepted by design office until 2026-04-15: gauge on an arm`,
    )
  })

  it('leaves no finding out', () => {
    const positions = (findings: readonly Finding[]) =>
      findings.map(({ check, at }) => [check, at.section.text, at.span])
    expect(positions(over(boat + concession()))).toEqual(positions(over(boat)))
  })

  it('on a block holds for what stands inside it, and not for its neighbours', () => {
    expect(severities(over(boat + concession({ on: 'main' })))).toEqual(['information', 'error'])
    expect(severities(over(boat + concession({ on: 'port' })))).toEqual(['error', 'information'])
  })

  it.each([
    ['2026-04-14', 'information'],
    ['2026-04-15', 'information'],
    ['2026-04-16', 'error'],
  ])('holds to the end of its last day: on %s the finding is %s', (today, severity) => {
    const findings = over(boat + concession(), today)
    expect(severities(findings)[0]).toBe(severity)
    expect(ids(findings).includes('job/concession-expired')).toBe(severity === 'error')
  })

  it('accepts nothing without a reason, a name or an end date', () => {
    for (const without of ['reason', 'by', 'until', 'on'] as const) {
      const findings = over(boat + concession({ [without]: '' }))
      expect(severities(findings), without).toEqual(['error', 'error'])
      expect(findings.length, without).toBeGreaterThan(over(boat).length)
    }
    expect(severities(over(boat + concession({ reason: '"  "' })))).toEqual(['error', 'error'])
  })

  it('accepts no error of the text itself, and is then a finding: it accepts nothing', () => {
    const findings = over(
      `drive main { gear { ratio: 2.5 kg } }\n${concession({ check: 'job/unit-wrong-kind', on: 'main' })}`,
    )
    expect(severities(findings, 'job/unit-wrong-kind')).toEqual(['error'])
    expect(ids(findings)).toContain('job/concession-unused')
  })

  it('that nothing needs is a finding, and so is one for a check or a block that does not exist', () => {
    const idle = concession().replace(fault, 'alignment/offset-outside')
    expect(ids(over(boat + idle))).toContain('job/concession-unused')
    expect(ids(over(boat + concession({ on: 'main.cuopling' })))).toContain('job/concession-unused')
    expect(ids(over(boat + concession({ check: 'alignment/none-such' })))).toContain(
      'job/concession-unknown-check',
    )
  })
})

describe('an as-built job', () => {
  const asBuilt = 'job "x" {\n  vessel: "Launch"\n  status: as-built\n}\n'
  const claims = (text: string, today?: string) =>
    ids(over(asBuilt + text, today)).includes('job/as-built-with-errors')

  it('has no error open: each is put right or accepted', () => {
    expect(claims(boat)).toBe(true)
    expect(claims(boat + concession())).toBe(true)
    expect(claims(boat + concession() + concession({ on: 'port' }))).toBe(false)
    expect(claims('drive main { gear { ratio: 2.5 } }')).toBe(false)
  })

  it('has it open again when the concession has run out', () => {
    const accepted = boat + concession() + concession({ on: 'port' })
    expect(claims(accepted, '2026-04-16')).toBe(true)
  })
})
