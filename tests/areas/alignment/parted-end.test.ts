// The end of a parted shaft that is held up does not hang (geometry): US Army TM 55-1905-222-14, alignment of propeller shaft, has the droop of the
// parted flange as a target because the shaft is lifted by it when joined.
import { describe, expect, it } from 'vitest'
import { correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { readingInLog } from '../../../server/src/areas/alignment/plans/log.ts'
import { fixesFor } from '../../../server/src/areas/fixes.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { Checker } from '../../../server/src/checks/run.ts'
import { Analysis } from '../../../server/src/job/analysis.ts'
import { openDocument } from '../../../server/src/job/document.ts'
import { linkFile } from '../../../server/src/job/files.ts'
import { blockIn } from '../job-text.ts'

const reading = (name: string, day: string, more: string) => `  reading ${name} {
    taken: 2026-03-${day}
    ${more}
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
`
const drive = (...parts: readonly string[]) => `drive main {
  coupling { flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
${parts.join('')}}
`
const target = '  target { shaft-droop: 0.08 mm  shaft-slope: 0.3 mrad }\n'

function correct(text: string) {
  const { block, lookup } = blockIn(text, 'main.a')
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return outcome.value
}

describe('the end of the parted shaft', () => {
  it('that hung free has its droop in the target', () => {
    const c = correct(drive(target, reading('a', '04', 'parted-end: free')))
    expect(c.target?.target.vertical).toEqual({ offset: 0.08e-3, slope: expect.closeTo(0.3e-3, 9) })
    expect(c.assumptions.join()).not.toContain('parted-end')
  })

  it('is taken as free where the reading does not say, and the plan says so', () => {
    const c = correct(drive(target, reading('a', '04', '')))
    expect(c.target?.target.vertical.offset).toBeCloseTo(0.08e-3, 9)
    expect(c.assumptions.join()).toContain('hung free: parted-end is not stated')
    expect(correct(drive(reading('a', '04', ''))).assumptions.join()).not.toContain('parted-end')
  })

  it('that was supported has none, and none is said to be missing', () => {
    for (const part of [target, '']) {
      const c = correct(drive(part, reading('a', '04', 'parted-end: supported')))
      expect(c.target).toBeUndefined()
      expect(c.gapVariation.value.value).toBeCloseTo(0, 9)
      expect(c.assumptions.join()).not.toContain('hung free')
      expect(c.assumptions.join().includes('supported on its running line')).toBe(part !== '')
    }
    expect(correct(drive(reading('a', '04', 'parted-end: free'))).assumptions.join()).toContain('droop')
  })

  it('keeps the other parts of the target', () => {
    const c = correct(
      drive(
        '  target { shaft-droop: 0.08 mm  maker-up: 0.05 mm }\n',
        reading('a', '04', 'parted-end: supported'),
      ),
    )
    expect(c.target?.parts).toHaveLength(1)
    expect(c.target?.target.vertical.offset).toBeCloseTo(0.05e-3, 9)
  })

  const move = '  move after a { done: 2026-03-04  fwd-port: up 1 flat  fwd-stbd: up 1 flat }\n'
  it.each([
    ['end-supported', '', 'parted-end: supported'],
    ['end-supported', 'parted-end: free', 'parted-end: supported'],
    ['end-freed', 'parted-end: supported', 'parted-end: free'],
  ])('moves the flange that is read against: %s', (type, first, second) => {
    const { block, lookup } = blockIn(
      drive(reading('a', '04', first), move, reading('b', '05', second)),
      'main.b',
    )
    expect(readingInLog(block, lookup).against).toEqual({ type, since: 'a' })
  })

  it.each([
    ['', 'parted-end: free'],
    ['parted-end: supported', 'parted-end: supported'],
  ])('is compared where it did not change: %s, %s', (first, second) => {
    const { block, lookup } = blockIn(
      drive(reading('a', '04', first), move, reading('b', '05', second)),
      'main.b',
    )
    expect(readingInLog(block, lookup).against?.type).toBe('compared')
  })

  it('is carried on to the next reading', () => {
    const text = drive(reading('a', '04', 'afloat: no\n    parted-end: supported'), move)
    const file = linkFile('a.wright', openDocument(text), () => undefined)
    const analysis = new Analysis()
    analysis.begin()
    const findings = new Checker(analysis, allChecks).check(file, { today: '2026-03-05' })
    const unread = findings.find(({ check }) => check === 'alignment/no-reading-after-move')
    if (!unread) return expect.fail('no finding')
    const [fix] = fixesFor(unread, { analysis, file, findings, today: '2026-03-05' })
    expect(fix?.edits.map(({ newText }) => newText).join()).toMatch(
      /afloat:\s+no\n\s+parted-end:\s+supported\n\s+gauge:/,
    )
  })
})
