// The fix of `job/not-taken`: blanks for what each drive has of its own. Design decision, no source.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { obeysLaws } from './laws.ts'
import { findingsOf } from './marks.ts'
import { applied, fixed } from './offers.ts'

describe('what a drive does not take from another', () => {
  const port = `drive port {
  propeller { diameter: 420 mm  turns: left-hand }
  motor pm { mass: 60 kg [measured]  power: 3 kW }
  bed {
    adjuster: stud-and-nuts
    thread:   M16
    foot aft { from-coupling: 180 mm  across: 0 mm  travel-up: 3 mm }
    foot fwd { from-coupling: 480 mm  across: 0 mm }
  }
  target { shaft-droop: 0.1 mm }
  phase-map { A to U, B to V, C to W }
}
`
  const check = 'job/not-taken'
  const whole = 'Add the 5 that are not taken'

  it('is written as blanks in blocks of its own, which take the rest as before', () => {
    const after = fixed(`${port}\ndrive starboard {\n  like: port\n}\n`, check, whole)
    expect(after.slice(after.indexOf('drive starboard'))).toBe(`drive starboard {
  like: port

  propeller { turns: ? }

  motor pm { mass: ? }

  bed { foot aft { travel-up: ? } }

  target { shaft-droop: ? }

  phase-map { ? to ?, ? to ?, ? to ? }
}
`)
    const { findings } = findingsOf(after, allChecks)
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([])
    expect(findings.map((finding) => finding.check)).not.toContain(check)
  })

  it.each([
    ['in one line at the end of the text', 'drive starboard { like: port }'],
    ['without its brace', 'drive starboard {\n  like: port'],
    [
      'with a part of it written',
      'drive starboard {\n  like: port\n  propeller { pitch: 300 mm }\n  bed {\n    foot aft { growth: 0.1 mm }\n  }\n}\n',
    ],
    [
      'in a drive that another takes in its turn',
      'drive starboard { like: port }\ndrive third { like: starboard }\n',
    ],
  ])('%s', (_title, starboard) => {
    const text = port + starboard
    const offered = obeysLaws(text, allChecks.find(({ id }) => id === check) as never, {
      today: '2026-03-10',
    })
    expect(offered.length).toBeGreaterThan(0)
    for (const { document, fix } of offered) {
      const after = applied(document, fix)
      expect(after.slice(0, port.length)).toBe(port)
      expect(after.match(/travel-up: \?/g)).toHaveLength(1)
      expect(after.slice(port.length)).not.toMatch(/^\}\n+ +(propeller|motor)/m)
    }
  })
})
