// Plans from readings that the log, the feet or the coupling itself speak against. Readings are computed from geometry; that nothing is moved by them is
// common practice, no source.
import { describe, expect, it } from 'vitest'
import { trustedCorrection } from '../../../server/src/areas/alignment/plan-trust.ts'
import { logUpTo } from '../../../server/src/areas/alignment/plans/log.ts'
import { logJson } from '../../../server/src/areas/alignment/plans/log-json.ts'
import { planJson } from '../../../server/src/areas/alignment/plans/plan-json.ts'
import { correctionMarkdown, correctionText } from '../../../server/src/areas/alignment/plans/words.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { Checker } from '../../../server/src/checks/run.ts'
import { Analysis } from '../../../server/src/job/analysis.ts'
import { openDocument } from '../../../server/src/job/document.ts'
import { linkFile } from '../../../server/src/job/files.ts'
import { lookupFrom } from '../../../server/src/store/store.ts'
import { findingsOf } from '../../checks/marks.ts'
import { blockIn } from '../job-text.ts'

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
  const outcome = trustedCorrection(block, lookupFrom(block, { analysis, file }), { file, findings })
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return outcome.value
}

const start = { oz: 0.4, oy: -0.3, tv: -4, th: 2.4 }
const move =
  '  move after r1 { done: 2026-03-04  aft-port: up 1 flat  aft-stbd: up 1 flat  fwd-port: up 2 flats  fwd-stbd: up 2 flats }\n'
/** A flat of M16 is a third of a millimetre: what the move should do. */
const poseAfter = (aft: number, fwd: number): Pose => {
  const tv = (fwd - aft) / 0.38
  return { ...start, tv: start.tv + tv, oz: start.oz + aft - 0.18 * tv }
}
const right = poseAfter(1 / 3, 2 / 3)

describe('a reading after a move', () => {
  it('as it should be gives steps', () => {
    const c = planned(
      job(reading('r1', '2026-03-04', start) + move + reading('r2', '2026-03-05', right)),
      'r2',
    )
    expect(c).toMatchObject({ verdict: 'outside' })
    expect(c.withheld).toBeUndefined()
    expect(c.moveDiscrepancy).toBeUndefined()
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

  it('with the forward nuts turned the wrong way gives steps, and says what happened', () => {
    const wrong = poseAfter(1 / 3, -2 / 3)
    const c = planned(
      job(reading('r1', '2026-03-04', start) + move + reading('r2', '2026-03-05', wrong)),
      'r2',
    )
    expect(c.withheld).toBeUndefined()
    expect(c.moveDiscrepancy).toContain('the nuts at fwd-port and fwd-stbd were turned the wrong way')
    expect(c.moveDiscrepancy).toContain('Use the marks on the lower nuts to see')
    expect(c.moveDiscrepancy).toContain('shows the machine as it stands')
    expect(c.feet[2]?.moved).toBeGreaterThan(0)
  })

  // Mirrored readings, a left-hand thread and turns the wrong way show the same: no figure can tell them apart.
  it('with all nuts turned the wrong way gives none: a mirror and a left-hand thread fit as well', () => {
    const wrong = poseAfter(-1 / 3, -2 / 3)
    const text = job(reading('r1', '2026-03-04', start) + move + reading('r2', '2026-03-05', wrong))
    const c = planned(text, 'r2')
    expect(c.withheld).toBe('another-effect')
    for (const words of [
      'were turned the wrong way',
      'the thread is left-hand',
      'top and bottom are swapped in both readings, r1 and this one',
      'by this reading, it is open at the top',
      'the turns of a right-hand thread rise to the right',
    ])
      expect(c.moveDiscrepancy).toContain(words)
    // The move written as it was made frees the plan.
    const turned = move.replaceAll(': up', ': down')
    const freed = planned(
      job(reading('r1', '2026-03-04', start) + turned + reading('r2', '2026-03-05', wrong)),
      'r2',
    )
    expect(freed.moveDiscrepancy).toBeUndefined()
    expect(freed.withheld).toBeUndefined()
  })

  it('that no single mistake explains gives none', () => {
    const odd = { oz: 2.5, oy: 1.5, tv: 5, th: -6 }
    const c = planned(job(reading('r1', '2026-03-04', start) + move + reading('r2', '2026-03-05', odd)), 'r2')
    expect(c.withheld).toBe('another-effect')
    expect(c.moveDiscrepancy).toMatch(
      /No single mistake explains it\. Isolate and lock off the drive\. .*Read again before you move anything\./,
    )
    expect(c.moveDiscrepancy?.match(/read again/gi)).toHaveLength(1)
  })
})

it('the findings on a reading say the same of its steps as its plan', () => {
  const todo = (text: string, id: string) =>
    findingsOf(text, allChecks).findings.findLast(({ check }) => check === id)?.todo ?? ''
  const logged = (pose: Pose) =>
    job(reading('r1', '2026-03-04', start) + move + reading('r2', '2026-03-05', pose))
  const verdicts = new Set<boolean>()
  for (const pose of [
    poseAfter(-1 / 3, -2 / 3),
    poseAfter(1 / 3, -2 / 3),
    { ...right, oz: -right.oz, tv: -right.tv },
    { oz: 2.5, oy: 1.5, tv: 5, th: -6 },
    start,
  ]) {
    const text = logged(pose)
    const withheld = planned(text, 'r2').withheld === 'another-effect'
    verdicts.add(withheld)
    const ofTheMove = todo(text, 'alignment/move-had-another-effect')
    expect(ofTheMove.includes('this reading gives no steps')).toBe(withheld)
    expect(ofTheMove.includes('shows the machine as it stands')).toBe(!withheld)
    for (const id of ['alignment/gap-variation-outside', 'alignment/offset-outside']) {
      expect(todo(text, id).includes('Do not move anything yet')).toBe(withheld)
      expect(todo(text, id).includes('it gives the moves')).toBe(!withheld)
    }
  }
  expect(verdicts.size).toBe(2)
  expect(todo(logged(right), 'alignment/move-had-another-effect')).toBe('')
})

// Readings as a fitter would write them down: nothing is moved twice over by a reading that is old, or the wrong way by one that is mirrored. Figures
// from the line through the feet and the gauge's steps of 0.02 mm; common practice, no source.
describe('a log of two readings', () => {
  const twoReadings = (first: string, made: string, later: string) =>
    job(`  reading r1 { taken: 2026-03-01  gauge: 0.02 mm
    ${first}
  }
  move after r1 { done: 2026-03-01  ${made} }
  reading r2 { taken: 2026-03-02  gauge: 0.02 mm
    ${later}
  }
`)
  const low = `gaps: top 2.58 mm, starboard 2.50 mm, bottom 2.42 mm, port 2.50 mm
    offsets: top 0.10 mm, starboard 0.00 mm, bottom -0.10 mm, port 0.00 mm`
  const each = (aft: string, fwd: string) =>
    `aft-port: ${aft}  aft-stbd: ${aft}  fwd-port: ${fwd}  fwd-stbd: ${fwd}`

  it.each([
    {
      log: 'that shows the same again, heights only',
      text: twoReadings(low, each('up 0.5 flats', 'up 2 flats'), low),
      named: [{ type: 'nothing-moved' }],
      words: ['Most likely nothing moved', 'Tighten all feet and read again. Move nothing before that.'],
    },
    {
      log: 'that shows the same again, though the machine was to slide as well',
      text: twoReadings(low, each('up 0.5 flats, port 0.2 mm', 'up 2 flats, port 0.6 mm'), low),
      named: [{ type: 'nothing-moved' }],
      words: ['Most likely nothing moved', 'remove it from the log'],
    },
    {
      log: 'with port and starboard swapped in both',
      text: twoReadings(
        `gaps: top 2.58 mm, starboard 2.62 mm, bottom 2.42 mm, port 2.38 mm
    offsets: top 0.12 mm, starboard 0.34 mm, bottom -0.12 mm, port -0.34 mm`,
        each('up 0.5 flats, starboard 0.05 mm', 'up 2.5 flats, starboard 0.88 mm'),
        `gaps: top 2.48 mm, starboard 2.74 mm, bottom 2.52 mm, port 2.26 mm
    offsets: top -0.02 mm, starboard 0.66 mm, bottom 0.02 mm, port -0.66 mm`,
      ),
      named: [{ type: 'wrong-side' }, { type: 'sides-swapped', swapped: 'both' }],
      words: ['by this reading, it is open at the starboard side', 'correct both readings'],
    },
    {
      log: 'with top and bottom swapped in both',
      text: twoReadings(
        `gaps: top 2.42 mm, starboard 2.38 mm, bottom 2.58 mm, port 2.62 mm
    offsets: top -0.14 mm, starboard -0.34 mm, bottom 0.14 mm, port 0.34 mm`,
        each('down 0.5 flats, port 0.05 mm', 'down 2.5 flats, port 0.88 mm'),
        `gaps: top 2.32 mm, starboard 2.50 mm, bottom 2.68 mm, port 2.50 mm
    offsets: top -0.28 mm, starboard 0.00 mm, bottom 0.28 mm, port 0.00 mm`,
      ),
      named: [
        { type: 'turned-the-wrong-way' },
        { type: 'other-hand' },
        { type: 'top-and-bottom-swapped', swapped: 'both' },
      ],
      words: ['by this reading, it is open at the bottom', 'rise to the right'],
    },
    {
      log: 'that shows half the way',
      text: job(
        reading('r1', '2026-03-01', start) +
          move.replace('03-04', '03-01') +
          reading('r2', '2026-03-02', poseAfter(1 / 6, 1 / 3)),
      ),
      named: [{ type: 'part-of-the-way' }, { type: 'other-pitch' }],
      words: [
        'went only about half the way',
        'Tighten all feet and read again. Move nothing before that.',
        'correct the thread of the bed',
      ],
    },
    {
      log: 'that shows one foot that hangs',
      text: job(
        reading('r1', '2026-03-01', start) +
          move.replace('03-04', '03-01') +
          reading('r2', '2026-03-02', poseAfter(1 / 3, 1 / 3)),
      ),
      named: [{ type: 'did-not-follow' }, { type: 'did-not-follow' }],
      words: ['fwd-port or fwd-stbd did not follow', 'slacken one foot at a time'],
    },
  ])('$log names what fits, and gives no step', ({ text, named, words }) => {
    const { block, lookup } = blockIn(text, 'main.r2')
    const c = planned(text, 'r2')
    const json = planJson(c)
    expect(json).toMatchObject({ withheld: 'another-effect', predicted: null })
    expect(c.feet.every(({ step, moved, slid }) => step.by === 'none' && moved === 0 && slid === 0)).toBe(
      true,
    )
    const against = logJson(logUpTo(block, lookup)).at(-1)?.against
    expect(against?.type === 'compared' && against.explanations).toMatchObject(named)
    for (const said of words) {
      expect(correctionText(c, 'metric')).toContain(said)
      expect(json.slip).toContain(said)
    }
    const { findings } = findingsOf(text, allChecks)
    const ofTheMove = findings.find(({ check }) => check === 'alignment/move-had-another-effect')
    expect(`${ofTheMove?.detail} ${ofTheMove?.todo}`).toContain(words[0])
    expect(findings.some(({ todo = '' }) => /Move the feet|as it stands/.test(todo))).toBe(false)
  })

  it('gives steps again once the log is written as it was', () => {
    const stale = each('up 0.5 flats', 'up 2 flats')
    expect(planned(twoReadings(low, stale, low), 'r2').withheld).toBe('another-effect')
    const none = planned(twoReadings(low, each('none', 'none'), low), 'r2')
    expect([none.withheld, none.moveDiscrepancy]).toEqual([undefined, undefined])
  })

  it('says a feeler where the opening is too narrow to be seen', () => {
    // Gap wider at the bottom by 0.22 mm: 2 mrad on 110 mm.
    const to = { ...start, oz: 0.4, tv: 2 }
    const from = { ...to, tv: to.tv - (2 / 3 - 1 / 3) / 0.38 - 0.001, oz: to.oz - 1 / 3 + 0.158 }
    const mirrored = (pose: Pose) => ({ ...pose, oz: -pose.oz, tv: -pose.tv })
    const text = job(
      reading('r1', '2026-03-01', mirrored(from)) +
        move.replace('03-04', '03-01') +
        reading('r2', '2026-03-02', mirrored(to)),
    )
    expect(planned(text, 'r2').moveDiscrepancy).toContain(
      'Try a feeler gauge at the top and at the bottom: by this reading, the top takes 0.22 mm more.',
    )
  })
})

describe('a soft foot', () => {
  const lifts = (first: number) =>
    `lifts: aft-port ${first} mm, aft-stbd 0.01 mm, fwd-port 0.01 mm, fwd-stbd 0.01 mm`

  it('stays soft until the lifts are read again', () => {
    const r1 = reading('r1', '2026-03-04', start, lifts(0.1))
    const later = planned(job(r1 + reading('r2', '2026-03-05', start)), 'r2')
    expect(later.withheld).toBe('soft-foot')
    expect(correctionText(later, 'metric')).toContain('Reading r1 found this')
    expect(planned(job(r1 + reading('r2', '2026-03-05', start, lifts(0.02))), 'r2').withheld).toBeUndefined()
  })

  it('and a move at it changes nothing: only its lift can show that it bears', () => {
    const r1 = reading('r1', '2026-03-04', start, lifts(0.1))
    for (const feet of ['aft-port: up 0.09 mm', 'aft-port: starboard 0.1 mm  fwd-port: none'])
      expect(
        planned(
          job(`${r1}  move after r1 { done: 2026-03-04  ${feet} }\n${reading('r2', '2026-03-05', start)}`),
          'r2',
        ).doubts.map(({ type }) => type),
      ).toContain('soft-foot')
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
  expect(correctionText(far, 'metric')).toContain('! A foot would go more than 5.0 mm')
  expect(correctionText(planned(job(reading('r1', '2026-03-04', start)), 'r1'), 'metric')).not.toContain(
    'straightedge',
  )
})
