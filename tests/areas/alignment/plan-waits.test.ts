// What a finding means for the plan of a reading. Common practice, no source: no foot is moved by a log that cannot be right, and a machine that is
// merely out of line is moved.
import { describe, expect, it } from 'vitest'
import { trustedCorrection } from '../../../server/src/areas/alignment/plan-trust.ts'
import { lastReading } from '../../../server/src/areas/alignment/plans/moves.ts'
import { planJson } from '../../../server/src/areas/alignment/plans/plan-json.ts'
import { correctionText } from '../../../server/src/areas/alignment/plans/words.ts'
import { fixesFor } from '../../../server/src/areas/fixes.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { type Check, isBlockCheck, planKinds } from '../../../server/src/checks/check.ts'
import { Checker } from '../../../server/src/checks/run.ts'
import { hover } from '../../../server/src/editor/hover/hover.ts'
import { planOf } from '../../../server/src/editor/plan/plan.ts'
import { Analysis } from '../../../server/src/job/analysis.ts'
import { openDocument } from '../../../server/src/job/document.ts'
import { linkFile } from '../../../server/src/job/files.ts'
import type { Block } from '../../../server/src/job/model.ts'
import { lookupFrom } from '../../../server/src/store/store.ts'

const today = '2026-03-10'

function opened(text: string) {
  const file = linkFile('a.wright', openDocument(text), () => undefined)
  const analysis = new Analysis()
  analysis.begin()
  const findings = new Checker(analysis, allChecks).check(file, { today })
  const blocks = analysis.blocks(file)
  const drive = blocks.find(({ kind }) => kind === 'drive')
  const reading = drive && lastReading(drive)
  if (!reading) throw new Error('no reading')
  return { analysis, file, findings, blocks, reading, lookup: lookupFrom(reading, { analysis, file }) }
}

const planned = ({ reading, lookup, file, findings }: Omit<ReturnType<typeof opened>, 'analysis'>) => {
  const outcome = trustedCorrection(reading, lookup, { file, findings })
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return outcome.value
}

const bed = `  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
`
const parts = {
  coupling:
    '  coupling { flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }\n',
  bed,
  reading: `  reading last-1 {
    taken: 2026-03-09
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
    offsets: top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm
  }
`,
}

/** The example of a check with what a plan needs beside it. */
const whole = ({ fires }: Check): string =>
  Object.entries(parts).reduce(
    (text, [kind, block]) =>
      new RegExp(`^ *${kind}\\b.*\\{`, 'm').test(text)
        ? text
        : text.replace(/^drive\b.*?\{/m, (opened) => `${opened}\n${block}`),
    fires,
  )

const within = (at: Block, blocks: readonly Block[]): readonly Block[] =>
  blocks.flatMap((block) => [block, ...within(at, block.children)])

describe('a check whose finding stands in what a plan is made from', () => {
  const ofPlans = allChecks.filter((c) => {
    // Those that look at every block say it with each finding: tests/checks/status.test.ts.
    if (!isBlockCheck(c) || c.on === 'every kind' || !c.fires.includes('drive')) return false
    const { findings, blocks, reading } = opened(whole(c))
    const holders = within(reading, blocks).filter(({ kind }) => planKinds.some((one) => one === kind))
    return findings.some(
      ({ check, at }) =>
        check === c.id &&
        holders.some(
          ({ section, node }) =>
            section === at.section && node.span.start <= at.span.start && at.span.end <= node.span.end,
        ),
    )
  })

  it('is found among all checks', () => {
    expect(ofPlans.length).toBeGreaterThan(28)
    expect(ofPlans.map(({ id }) => id)).toContain('alignment/misalignment-beyond-coupling')
  })

  it.each(ofPlans.map((c) => [c.id, c] as const))(
    '%s says what it means for the plan, and the plan does so',
    (id, c) => {
      const says = isBlockCheck(c) ? c.plan : undefined
      expect(says).toBeDefined()
      const job = opened(whole(c))
      const own = job.findings.filter(({ check }) => check === id)
      expect(own.length).toBeGreaterThan(0)
      for (const { plan } of own) expect(plan).toBe(says)
      const outcome = trustedCorrection(job.reading, job.lookup, { file: job.file, findings: own })
      // A reading that cannot be worked out has no steps whatever is found.
      if (!outcome.ok) return expect(outcome.fault.words).not.toBe('')
      const { withheld, errors, findings, feet } = outcome.value
      const waits = errors !== undefined || findings !== undefined
      expect(waits).toBe(says === 'waits')
      if (!waits) return
      expect(withheld).toBeDefined()
      expect(feet.every(({ step }) => step.by === 'none')).toBe(true)
    },
  )
})

it('a machine further out than its coupling is rated for is aligned: check and plan say the same', () => {
  const job = opened(`drive main {
  coupling { kind: flexible  pilot: no  flange-diameter: 125 mm  gap-variation: max 0.1 mm  offset: max 0.15 mm  max-offset: 0.5 mm }
${bed}  reading a {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.90 mm, starboard 1.80 mm, bottom 1.70 mm, port 1.80 mm
    offsets: top 0.6 mm, starboard 0 mm, bottom -0.6 mm, port 0 mm
  }
}
`)
  const found = job.findings.find(({ check }) => check === 'alignment/misalignment-beyond-coupling')
  expect(found?.todo).toContain('Follow the plan')
  const c = planned(job)
  expect(c.withheld).toBeUndefined()
  expect(c.errors).toBeUndefined()
  expect(c.feet.some(({ moved }) => moved !== 0)).toBe(true)
})

const launch = (
  taken: string,
  more = '',
  launched = '2026-03-05',
) => `job "launch" { vessel: "x"  launched: ${launched} }
drive main {
${parts.coupling}${bed}  reading b {
    taken: ${taken}
    gauge: 0.02 mm
    afloat: yes
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
    offsets: top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm
  }
}
${more}`
const id = 'alignment/read-too-soon-after-launch'
const concession = (until: string) => `concession ${id} {
  on: main.b
  reason: "sea trial tomorrow"
  granted-by: "design office"
  until: ${until}
}
`

describe('a reading taken too soon after the launch', () => {
  const job = opened(launch('2026-03-05'))

  it('is said first in the plan, which gives no steps', () => {
    const c = planned(job)
    expect(c.withheld).toBe('finding')
    expect(c.verdict).toBe('outside')
    expect(c.predicted).toBeUndefined()
    const text = correctionText(c, 'metric')
    expect(/^ {2}! (.*)$/m.exec(text)?.[1]).toBe(
      `The reading was taken less than 24 hours after the boat was launched. The hull may still be settling. Read again 24 to 48 hours after launching, with fuel and ballast aboard. Until then the plan gives no steps, unless the job has a concession for ${id} (at 13:12).`,
    )
    expect(text).toContain('no step is given')
  })

  it('is so in JSON, in the editor and in the quick fixes', () => {
    const { analysis, file, findings, reading } = job
    expect(planJson(planned(job))).toMatchObject({
      withheld: 'finding',
      errors: [],
      findings: [{ check: id, place: '13:12' }],
      predicted: null,
    })
    const offset = reading.node.span.start + 3
    for (const words of [
      planOf({ analysis, file }, reading, findings),
      hover({ analysis, file, findings: () => findings }, reading.section, offset)?.markdown,
    ]) {
      expect(words).toContain('Read again 24 to 48 hours after launching')
      expect(words).toContain('no step is given')
    }
    const verdict = findings.find(({ check }) => check === 'alignment/gap-variation-outside')
    if (!verdict) return expect.fail('no verdict')
    const titles = fixesFor(verdict, { analysis, file, findings, today }).map(({ title }) => title)
    expect(titles).not.toContain('Write this move into the job')
  })

  it('has steps where a concession accepts it, as long as that is in force', () => {
    const accepted = opened(launch('2026-03-05', concession('2026-04-01')))
    expect(accepted.findings.find(({ check }) => check === id)).toMatchObject({
      severity: 'information',
      accepted: true,
    })
    const c = planned(accepted)
    expect([c.withheld, c.findings]).toEqual([undefined, undefined])
    expect(c.feet.some(({ moved }) => moved !== 0)).toBe(true)
    expect(planned(opened(launch('2026-03-05', concession('2026-03-09')))).withheld).toBe('finding')
  })

  it('but not two days after it', () => {
    expect(planned(opened(launch('2026-03-07'))).withheld).toBeUndefined()
  })
})

it('a reading afloat before the launch contradicts the job, and its plan waits', () => {
  const job = opened(launch('2026-03-04'))
  const found = job.findings.find(({ check }) => check === 'alignment/afloat-before-launch')
  expect(found?.todo).toContain('`launched`')
  expect(planned(job).withheld).toBe('finding')
})

it('an error that stops the plan stops it no longer where it is accepted', () => {
  const wide = parts.coupling.replace('110 mm', '150 mm')
  const text = launch('2026-03-07').replace(parts.coupling, wide)
  expect(planned(opened(text)).withheld).toBe('errors')
  const accepted = `${text}${concession('2026-04-01').replace(id, 'alignment/gauge-diameter-beyond-flange').replace('main.b', 'main')}`
  expect(planned(opened(accepted)).withheld).toBeUndefined()
})
