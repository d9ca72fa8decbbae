import { describe, expect, it } from 'vitest'
import { drivePlanSchema } from '../../../server/src/areas/alignment/commands/plan-schema.ts'
import { awaitedUnder, trustedCorrection } from '../../../server/src/areas/alignment/plan-trust.ts'
import { planJson } from '../../../server/src/areas/alignment/plans/plan-json.ts'
import { correctionText } from '../../../server/src/areas/alignment/plans/words.ts'
import { fixesFor } from '../../../server/src/areas/fixes.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { Checker } from '../../../server/src/checks/run.ts'
import { hover } from '../../../server/src/editor/hover/hover.ts'
import { planOf } from '../../../server/src/editor/plan/plan.ts'
import { Analysis } from '../../../server/src/job/analysis.ts'
import { openDocument } from '../../../server/src/job/document.ts'
import { linkFile } from '../../../server/src/job/files.ts'
import { isWithin } from '../../../server/src/job/model.ts'
import { lookupFrom } from '../../../server/src/store/store.ts'
import { findingsOf } from '../../checks/marks.ts'
import { titles } from '../../checks/offers.ts'

// Common practice, no source: a machine is not moved by a log that can be read in two ways.

const sound = `drive main {
  seal { shaft-size: 35 mm  free-length: 148 mm  fitted-length: 121 mm  compression: 24 mm to 29 mm [maker] }
  coupling {
    kind: flexible
    flange-diameter: 125 mm
    gauge-diameter: 110 mm
    gap-variation: max 0.10 mm
    offset: max 0.15 mm
  }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
  reading r0 {
    taken: 2026-03-03
    gauge: 0.02 mm
    gaps: top 1.97 mm, starboard 1.80 mm, bottom 1.61 mm, port 1.78 mm
    by: "fitter 2"
  }
  move after r0 { done: 2026-03-04  fwd-port: up 1 flat  fwd-stbd: up 1 flat }
  reading r1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
    offsets: top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm
    by: "fitter 2"
  }
}
drive other {
  seal { shaft-size: 35 mm  free-length: 148 mm  fitted-length: 121 mm  compression: 24 mm to 29 mm [maker] }
}
`

function opened(text: string, path = 'main.r1') {
  const file = linkFile('a.wright', openDocument(text), () => undefined)
  const analysis = new Analysis()
  analysis.begin()
  const findings = new Checker(analysis, allChecks).check(file, { today: '2026-03-05' })
  const blocks = analysis.blocks(file).flatMap((block) => [block, ...block.children])
  const reading = blocks.find((block) => block.path === path)
  if (!reading) throw new Error(`no reading ${path}`)
  return { analysis, file, findings, reading, lookup: lookupFrom(reading, { analysis, file }) }
}

const changed = (good: string | RegExp, bad: string): string => {
  const text = sound.replace(good, bad)
  expect(text).not.toBe(sound)
  return text
}

const under = (text: string): readonly string[] => {
  const { file, findings, reading, lookup } = opened(text)
  return awaitedUnder(reading, lookup, { file, findings }).map(({ check }) => check)
}

const inR1 = /(reading r1 \{[^}]*)\n {2}\}/
const afterR1 = (line: string): string => changed(inR1, `$1\n  }\n  ${line}`)

describe('a plan is given without steps', () => {
  it.each([
    [
      'gaps twice',
      changed(inR1, '$1\n    gaps: top 1 mm, starboard 1 mm, bottom 2 mm, port 1 mm\n  }'),
      'job/duplicate',
    ],
    ['a gauge wider than the flange', changed('110 mm', '150 mm'), 'alignment/gauge-diameter-beyond-flange'],
    ['a foot twice', changed('foot fwd-port', 'foot aft-port'), 'job/duplicate'],
    ['a word mistaken for move', afterR1('moved after r1 { fwd-port: up 1 flat }'), 'job/block-unknown'],
    ['a move without what was moved', afterR1('move after r1'), 'job/line-not-understood'],
    ['a move without the reading', afterR1('move r1 { fwd-port: up 1 flat }'), 'job/heading-unclear'],
    [
      'a move after no reading',
      afterR1('move after r9 { done: 2026-03-04  fwd-port: up 1 flat }'),
      'alignment/move-after-unknown-reading',
    ],
    ['a move of no foot', changed('fwd-port: up', 'fwd: up'), 'alignment/move-of-unknown-foot'],
    [
      'a move behind one bracket too many',
      afterR1('}\n  move after r1 { done: 2026-03-04  fwd-port: up 1 flat }'),
      'job/closing-without-block',
    ],
    [
      'a move within an older reading',
      changed(/\n {2}\}\n {2}(move .*)/, '\n  $1\n  }'),
      'job/block-misplaced',
    ],
    [
      'one bracket too many behind a fact of an older reading',
      afterR1('reading old {\n    taken: 2026-03-01 }\n    gauge: 0.02 mm\n  }'),
      'job/closing-without-block',
    ],
  ])('where the file has %s', (_what, text, check) => {
    expect(under(text)).toContain(check)
    const { analysis, file, findings, reading, lookup } = opened(text)
    const outcome = trustedCorrection(reading, lookup, { file, findings })
    if (!outcome.ok) return expect.fail(outcome.fault.words)
    expect(outcome.value.withheld).toBeDefined()
    expect(outcome.value.verdict).toBe('outside')
    expect(outcome.value.feet.every(({ step }) => step.by === 'none')).toBe(true)
    expect(outcome.value.predicted).toBeUndefined()
    const at = text.indexOf('reading r1')
    const shown = [
      correctionText(outcome.value, 'metric'),
      planOf({ analysis, file }, reading, findings),
      hover({ analysis, file, findings: () => findings }, reading.section, at + 3)?.markdown,
    ]
    for (const words of shown) {
      expect(words).toMatch(/Fix (?:it|them) first/)
      expect(words).toMatch(new RegExp(`${check} at \\d+:\\d+`))
      expect(words).toContain('no step is given')
    }
  })

  it('and its move is not offered to be written', () => {
    const titles = (text: string): readonly string[] => {
      const { analysis, file, findings } = opened(text)
      const verdict = findings.findLast(({ check }) => check === 'alignment/gap-variation-outside')
      return verdict
        ? fixesFor(verdict, { analysis, file, findings, today: '2026-03-05' }).map(({ title }) => title)
        : []
    }
    expect(titles(sound)).toContain('Write this move into the job')
    expect(titles(changed('110 mm', '124.9 mm'))).toContain('Write this move into the job')
    expect(titles(changed('110 mm', '150 mm'))).not.toContain('Write this move into the job')
  })

  it('but with them where the file is sound, or what is wrong lies beside it', () => {
    const beside = [
      sound,
      changed('flexible', 'flexibel'),
      changed(/by: "fitter 2"\n {2}\}\n\}/, 'by: fitter 2\n  }\n}'),
      changed('free-length: 148 mm', 'free-length: 148'),
      // A target that says of itself that there is no droop depends on no end of the shaft.
      changed(inR1, '$1\n    parted-end: wrong\n  }\n  target { shaft-droop: 0 mm }'),
      changed(/free-length: 148 mm([^}]*)\}\n\}\n$/, 'free-length: 148$1}\n}\n'),
      changed('gaps: top 1.97 mm', 'gaps: top 1.97 kg'),
      `${sound}seal { free-length: 1 }\n`,
      `${sound}drive third {\n  moved after r1 { a: up 1 flat }\n}\n`,
    ]
    for (const text of beside) {
      const { file, findings, reading, lookup } = opened(text)
      const outcome = trustedCorrection(reading, lookup, { file, findings })
      if (!outcome.ok) return expect.fail(outcome.fault.words)
      expect(outcome.value.errors, text).toBeUndefined()
      expect(outcome.value.withheld).toBeUndefined()
    }
  })
})

describe('what a concession accepts in the drive', () => {
  const concession = (check: string, on: string, until = '2026-12-31') =>
    `concession ${check} {\n  on: ${on}\n  reason: "read again after launch"\n  granted-by: "design office"\n  until: ${until}\n}\n`
  const outside = 'alignment/gap-variation-outside'
  const words =
    /Accepted by design office until 2026-12-31: .*gap variation.* \(alignment\/gap-variation-outside at \d+:\d+\)/i

  it('is said in the plan, as text, in the hover and as data', () => {
    const text = sound + concession(outside, 'main.r1')
    const { analysis, file, findings, reading, lookup } = opened(text)
    const outcome = trustedCorrection(reading, lookup, { file, findings })
    if (!outcome.ok) throw new Error(outcome.fault.words)
    expect(correctionText(outcome.value, 'metric')).toMatch(words)
    expect(planOf({ analysis, file }, reading, findings)).toMatch(words)
    const at = reading.section.text.indexOf('reading r1') + 3
    const hovered = hover({ analysis, file, findings: () => findings }, reading.section, at)
    expect(hovered?.markdown).toMatch(words)
    expect(drivePlanSchema.parse({ ...planJson(outcome.value), log: [] }).accepted).toEqual([
      {
        check: outside,
        place: expect.stringMatching(/^\d+:\d+$/),
        message: expect.stringContaining('ap variation'),
        by: 'design office',
        until: '2026-12-31',
      },
    ])
  })

  const said = (text: string): readonly string[] => {
    const { file, findings, reading, lookup } = opened(text)
    const outcome = trustedCorrection(reading, lookup, { file, findings })
    return outcome.ok
      ? correctionText(outcome.value, 'metric')
          .split('\n')
          .filter((line) => line.includes('Accepted by'))
      : []
  }

  it('is one line each, also of another part of the drive, and not of another drive', () => {
    const small = sound
      .replaceAll('shaft-size: 35 mm', 'shaft-size: 32 mm  ')
      .replaceAll('  seal', '  shaft { diameter: 35 mm }\n  seal')
    const seal = 'seal/shaft-size-differs'
    expect(said(small + concession(seal, 'main.seal') + concession(outside, 'main.r1'))).toHaveLength(2)
    expect(said(small + concession(seal, 'other.seal'))).toEqual([])
    expect(said(small)).toEqual([])
  })

  it('is not said once it no longer holds, but in a job that is as-built', () => {
    const ended = sound + concession(outside, 'main.r1', '2026-03-04')
    expect(said(ended)).toEqual([])
    const [line] = said(`${ended}job "x" { vessel: "v"  status: as-built }\n`)
    expect(line).toContain('until 2026-03-04, which has passed: ')
  })
})

it('the plan says what changed since the reading before, and which feet were moved', () => {
  const { analysis, file, findings, reading } = opened(sound)
  // 1.97 - 1.61 and 1.92 - 1.66 mm, where the gauge goes in.
  expect(planOf({ analysis, file }, reading, findings)).toContain(
    'Changed since r0: gap variation 0.36 → 0.26 mm; fwd-port, fwd-stbd up 1 flat.',
  )
})

it('a plan does not wait for an older reading with nothing in it', () => {
  const text = changed(/(reading r0 [\s\S]*?) +gaps: .*\n/, '$1')
  expect(findingsOf(text, allChecks).findings.map(({ check }) => check)).toContain('alignment/nothing-read')
  expect(under(text)).toEqual([])
})

it('a reading outside a drive waits for its own errors alone', () => {
  const [shared = ''] = /coupling [\s\S]*(?=\n {2}reading r0)/.exec(sound) ?? []
  const [reading = ''] = /reading r1 [\s\S]*?\n {2}\}\n/.exec(sound) ?? []
  const text = `${shared}\n${reading}seal { free-length: 1 }\n`
  const { file, findings, reading: alone, lookup } = opened(text, 'r1')
  expect(findings.map(({ check }) => check)).toContain('job/unit-missing')
  expect(awaitedUnder(alone, lookup, { file, findings }).map(({ check }) => check)).toEqual([
    'job/block-misplaced',
  ])
  // No log that it is in, so no move after it.
  const outcome = trustedCorrection(alone, lookup, { file, findings: [] })
  expect(outcome.ok && [outcome.value.verdict, outcome.value.movedSince]).toEqual(['outside', false])
  expect(titles(text, 'alignment/gap-variation-outside')).not.toContain('Write this move into the job')
})

it('a plan does not wait for what an older reading still lacks: its log can be read', () => {
  const text = `job "a" { vessel: "x"  status: as-built }\n${changed('    taken: 2026-03-03\n', '')}`
  const { file, findings, lookup, reading } = opened(text)
  const older = reading.parent?.children.find(({ path }) => path === 'main.r0')
  const missing = findings.filter(
    ({ check, at }) => check === 'job/fact-missing' && older && isWithin(at, older),
  )
  expect(missing.map(({ severity }) => severity)).toEqual(['error'])
  expect(awaitedUnder(reading, lookup, { file, findings: missing })).toEqual([])
})
