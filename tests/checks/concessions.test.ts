// A finding can be accepted with reason, name and end date (concession: the ISO 9000 term); it is never left out.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import type { Finding } from '../../server/src/checks/check.ts'
import { findingsOf } from './marks.ts'

const fault = 'alignment/gauge-diameter-beyond-flange'
const boat = `drive main {
  coupling { flange-diameter: 100 mm  gauge-diameter: 110 mm }
}
drive port {
  coupling { flange-diameter: 100 mm  gauge-diameter: 110 mm }
}
`

const draft = 'job "x" {\n  vessel: "Launch"\n  status: draft\n}\n'

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

const job = (status: string): string => `job "Launch" { vessel: "Launch 07"  status: ${status} }\n`

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
    const [plain, accepted] = [before, after].map((all) => all.find((finding) => finding.check === fault))
    expect(accepted?.message).toBe(plain?.message)
    expect(accepted?.detail).toBe(`Accepted by design office until 2026-04-15: gauge on an arm`)
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
      if (without !== 'reason')
        expect(over(draft + boat + concession({ [without]: '' })).at(-1)?.check).toBe('job/fact-missing')
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

  it.each([
    ['job/block-missing', 'main', 'drive main { seal { free-length: 148 mm } }\n'],
    ['job/fact-missing', 'main.seal', 'drive main { seal { free-length: 148 mm } }\n'],
    ['job/fact-assumed', 'main.seal', 'drive main { seal { fitted-length: 121 mm [assumed] } }\n'],
    ['cable/missing', 'main', 'drive main { motor { power: 15 kW } }\n'],
    ['alignment/no-reading-within', 'main', 'drive main { seal { free-length: 148 mm } }\n'],
  ])('still lacks what a concession accepts as missing: %s stays a warning', (check, on, text) => {
    const accepted = text + concession({ check, on })
    const [before, after, issued] = [asBuilt + text, asBuilt + accepted, job('issued') + accepted].map(
      (all) => over(all).find(({ check: id, at }) => id === check && at.section.text.includes('drive main')),
    )
    expect(before).toMatchObject({ severity: 'error' })
    expect(after).toMatchObject({ severity: 'warning', message: before?.message, accepted: true })
    expect(after?.detail).toContain('Accepted by design office until 2026-04-15: gauge on an arm')
    if (issued) expect(issued).toMatchObject({ severity: 'information' })
    // Also once the concession has run out.
    expect(severities(over(asBuilt + accepted, '2026-04-16'), check)).toContain('warning')
  })

  it('does not turn red when the concession has run out', () => {
    const accepted = boat + concession() + concession({ on: 'port' })
    expect(claims(accepted, '2026-04-16')).toBe(false)
  })
})

describe('a concession past its last day', () => {
  const ended = boat + concession()
  const late = '2027-01-01'

  it('leaves the error back open while the job is not handed over', () => {
    for (const status of ['draft', 'for-review', 'issued'])
      expect(severities(over(job(status) + ended, late))).toEqual(['error', 'error'])
  })

  it('keeps it accepted in a job that is as-built, and is a warning itself', () => {
    const findings = over(job('as-built') + ended, late)
    expect(severities(findings)).toEqual(['information', 'error'])
    expect(findings.find(({ check }) => check === fault)?.detail).toMatch(
      /^Accepted by design office until 2026-04-15, which has passed: gauge on an arm$/,
    )
    const warned = findings.find(({ check }) => check === 'job/concession-expired')
    expect(warned).toMatchObject({ severity: 'warning', limit: '2026-04-15' })
    expect(warned?.detail).toContain('what it accepted stays accepted')
  })

  it('makes no plan that waited for it go on', () => {
    const [accepted] = over(job('as-built') + ended, late).filter(({ check }) => check === fault)
    expect(accepted).toMatchObject({ plan: 'waits' })
    expect(accepted).not.toHaveProperty('accepted')
  })

  it('gives way to one that is in force', () => {
    const both = job('as-built') + ended + concession({ until: '2028-01-01', reason: '"new arm"' })
    expect(over(both, late).find(({ check }) => check === fault)).toMatchObject({ accepted: true })
  })
})
