// Plans from readings that the log, the feet or the coupling itself speak against. Readings are computed from geometry; that nothing is moved by them is
// common practice, no source.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/checks/index.ts'
import { trustedCorrection } from '../../server/src/checks/plan-trust.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { lookupFrom } from '../../server/src/job/lookup.ts'
import { correctionMarkdown, correctionText } from '../../server/src/plans/alignment-words.ts'
import { findingsOf } from './marks.ts'

interface Pose {
  readonly oz: number
  readonly oy: number
  readonly tv: number
  readonly th: number
}

/** A reading of a machine that stands so (mm, mrad), gaps on 110 mm. */
const reading = (name: string, day: string, { oz, oy, tv, th }: Pose, more = '') => `  reading ${name} {
    taken: ${day}
    gauge: 0.01 mm
    gaps: top ${(2 - 0.055 * tv).toFixed(2)} mm, starboard ${(2 - 0.055 * th).toFixed(2)} mm, bottom ${(2 + 0.055 * tv).toFixed(2)} mm, port ${(2 + 0.055 * th).toFixed(2)} mm
    offsets: top ${oz.toFixed(2)} mm, starboard ${oy.toFixed(2)} mm, bottom ${(-oz).toFixed(2)} mm, port ${(-oy).toFixed(2)} mm
    ${more}
  }
`

const job = (log: string, coupling = '') => `drive main {
  coupling { kind: flexible  flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm  ${coupling} }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
${log}}
`

function planned(text: string, name: string) {
  const file = linkFile('a.wright', openDocument(text), () => undefined)
  const analysis = new Analysis()
  analysis.begin()
  const findings = new Checker(analysis, allChecks).check(file, { today: '2026-03-09' })
  const block = analysis.blocks(file)[0]?.children.find((one) => one.name === name)
  if (!block) throw new Error(`no reading ${name}`)
  const outcome = trustedCorrection(block, lookupFrom(block, analysis.scope(file)), { file, findings })
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return outcome.value
}

const start = { oz: 0.4, oy: -0.3, tv: -4, th: 2.4 }
const move =
  '  move after r1 { aft-port: up 1 flat  aft-stbd: up 1 flat  fwd-port: up 2 flats  fwd-stbd: up 2 flats }\n'
/** A flat of M16 is a third of a millimetre: what the move should do. */
const after = (aft: number, fwd: number): Pose => {
  const tv = (fwd - aft) / 0.38
  return { ...start, tv: start.tv + tv, oz: start.oz + aft - 0.18 * tv }
}
const right = after(1 / 3, 2 / 3)

describe('a reading after a move', () => {
  it('as it should be gives steps', () => {
    const c = planned(
      job(reading('r1', '2026-03-04', start) + move + reading('r2', '2026-03-05', right)),
      'r2',
    )
    expect(c).toMatchObject({ verdict: 'outside' })
    expect(c.withheld).toBeUndefined()
    expect(c.slip).toBeUndefined()
    expect(c.feet[2]?.moved).toBeGreaterThan(0)
  })

  it('with top and bottom swapped gives none, and says why at the head of text and hover', () => {
    const swapped = { ...right, oz: -right.oz, tv: -right.tv }
    const c = planned(
      job(reading('r1', '2026-03-04', start) + move + reading('r2', '2026-03-05', swapped)),
      'r2',
    )
    expect(c.withheld).toBe('another-effect')
    expect(c.feet.every((foot) => foot.step.by === 'none')).toBe(true)
    expect(correctionText(c, 'metric')).toMatch(/! .*top and bottom are swapped/)
    expect(correctionMarkdown(c, 'metric')).toMatch(/\*\*.*top and bottom are swapped/)
  })

  it('with the nuts turned the wrong way gives steps, and says what happened', () => {
    const wrong = after(-1 / 3, -2 / 3)
    const c = planned(
      job(reading('r1', '2026-03-04', start) + move + reading('r2', '2026-03-05', wrong)),
      'r2',
    )
    expect(c.withheld).toBeUndefined()
    expect(c.slip).toContain('the wrong way')
    expect(c.feet[2]?.moved).toBeGreaterThan(0)
  })

  it('that no single slip explains gives none', () => {
    const odd = { oz: 2.5, oy: 1.5, tv: 5, th: -6 }
    const c = planned(job(reading('r1', '2026-03-04', start) + move + reading('r2', '2026-03-05', odd)), 'r2')
    expect(c.withheld).toBe('another-effect')
  })
})

it('the finding on a move asks to read again exactly where its plan gives no moves', () => {
  const asks = (text: string) =>
    findingsOf(text, allChecks).findings.find(({ check }) => check === 'alignment/move-had-another-effect')
      ?.todo
  const logged = (pose: Pose) =>
    job(reading('r1', '2026-03-04', start) + move + reading('r2', '2026-03-05', pose))
  for (const pose of [
    after(-1 / 3, -2 / 3),
    { ...right, oz: -right.oz, tv: -right.tv },
    { oz: 2.5, oy: 1.5, tv: 5, th: -6 },
  ]) {
    const withheld = planned(logged(pose), 'r2').withheld === 'another-effect'
    expect(asks(logged(pose))?.includes('read again before anything is moved')).toBe(withheld)
  }
  expect(asks(logged(right))).toBeUndefined()
})

describe('a soft foot', () => {
  const lifts = (first: number) =>
    `lifts: aft-port ${first} mm, aft-stbd 0.01 mm, fwd-port 0.01 mm, fwd-stbd 0.01 mm`

  it('stays soft until the lifts are read again', () => {
    const r1 = reading('r1', '2026-03-04', start, lifts(0.1))
    const later = planned(job(r1 + reading('r2', '2026-03-05', start)), 'r2')
    expect(later.withheld).toBe('soft-foot')
    expect(correctionText(later, 'metric')).toContain('found at the reading r1')
    expect(planned(job(r1 + reading('r2', '2026-03-05', start, lifts(0.02))), 'r2').withheld).toBeUndefined()
  })

  it('or until a move was made at it', () => {
    const r1 = reading('r1', '2026-03-04', start, lifts(0.1))
    const shimmed = '  move after r1 { aft-port: up 0.09 mm }\n'
    expect(planned(job(r1 + shimmed + reading('r2', '2026-03-05', start)), 'r2').withheld).not.toBe(
      'soft-foot',
    )
    const aside = '  move after r1 { aft-port: starboard 0.1 mm  fwd-port: none }\n'
    expect(planned(job(r1 + aside + reading('r2', '2026-03-05', start)), 'r2').withheld).toBe('soft-foot')
  })
})

it('a pilot that is engaged leaves a target off the centre undecided, and nothing is moved', () => {
  const text = job(
    `  target { maker-up: 0.3 mm }\n  reading r1 { taken: 2026-03-04  gauge: 0.01 mm  gaps: top 2 mm, starboard 2 mm, bottom 2 mm, port 2 mm }\n`,
    'pilot: yes',
  )
  const c = planned(text, 'r1')
  expect(c.verdict).toBe('undecided')
  expect(c.withheld).toBe('pilot-engaged')
  expect(correctionText(c, 'metric')).toContain('Part the coupling')
})

it('a machine that is far off is first brought near by straightedge', () => {
  const far = planned(job(reading('r1', '2026-03-04', { oz: 1, oy: 0, tv: -20, th: 0 })), 'r1')
  expect(correctionText(far, 'metric')).toContain('! A foot would go more than 5.00 mm')
  expect(correctionText(planned(job(reading('r1', '2026-03-04', start)), 'r1'), 'metric')).not.toContain(
    'straightedge',
  )
})
