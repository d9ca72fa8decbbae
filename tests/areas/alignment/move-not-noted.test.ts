// A machine that stands otherwise though no move is noted was moved all the same, or one reading is not what it says: common practice, no source.
import { describe, expect, it } from 'vitest'
import { correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { readingInLog } from '../../../server/src/areas/alignment/plans/log.ts'
import { moveDiscrepancy } from '../../../server/src/areas/alignment/plans/move-discrepancy.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { blockIn } from '../job-text.ts'

const reading = (name: string, day: string, tv: number, oz: number, more = '') => `  reading ${name} {
    taken: 2026-${day}
    gauge: 0.01 mm
    gaps: top ${(2 - 0.055 * tv).toFixed(2)} mm, starboard 2.00 mm, bottom ${(2 + 0.055 * tv).toFixed(2)} mm, port 2.00 mm
    offsets: top ${oz} mm, starboard 0 mm, bottom ${-oz} mm, port 0 mm
    ${more}
  }
`
const job = (log: string, launched = '') => `job "a" { vessel: "x" ${launched} }
drive main {
  coupling { kind: flexible  flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
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
const discrepancy = (text: string) => {
  const { block, lookup } = blockIn(text, 'main.b')
  return moveDiscrepancy(block, lookup)
}

describe('two readings with no move noted between them', () => {
  it('that show the same say nothing', () => {
    expect(
      discrepancy(job(reading('a', '03-01', -2.3, 0.1) + reading('b', '03-02', -2.3, 0.1))),
    ).toBeUndefined()
  })

  it('that differ ask for the move, and steps go on from the later one', () => {
    const text = job(reading('a', '03-01', -3, 0.1) + reading('b', '03-02', -1.4, 0.3))
    expect(discrepancy(text)).toMatchObject({ withholds: false })
    expect(discrepancy(text)?.words).toContain(
      'No move is noted since a, but the machine has moved. Most likely a move was made and not noted.',
    )
    expect(discrepancy(text)?.first).toContain('write that as a move after a')
    expect(findingsOf(text, allChecks).findings.map(({ check }) => check)).toContain(
      'alignment/move-had-another-effect',
    )
    const { block, lookup } = blockIn(text, 'main.b')
    const outcome = correctionOf(block, lookup)
    expect(outcome.ok && outcome.value.feet.some(({ step }) => step.by === 'nut')).toBe(true)
  })

  it('that are mirrors of each other give no steps', () => {
    // Not quite mirrors: a move would explain it as well.
    const text = job(reading('a', '03-01', -3, 0.3) + reading('b', '03-02', 3, -0.29))
    expect(discrepancy(text)).toMatchObject({ withholds: true })
    expect(discrepancy(text)?.words).toContain('top and bottom are swapped')
    expect(discrepancy(text)?.words).toContain('a move was made and not noted')
  })
})

it('readings before and after a launch are not held against each other, though they do not say how the boat lay', () => {
  const text = (launched: string, more = '') =>
    job(reading('a', '03-01', -3, 0.1, more) + reading('b', '04-20', -1.4, 0.3, more), launched)
  const against = (said: string) => {
    const { block, lookup } = blockIn(said, 'main.b')
    return readingInLog(block, lookup).against?.type
  }
  expect(against(text('launched: 2026-03-10'))).toBe('launched')
  expect(against(text('launched: 2026-03-10', 'afloat: no'))).toBe('compared')
  expect(against(text('launched: 2026-02-10'))).toBe('compared')
  expect(against(text(''))).toBe('compared')
})

it('readings of one shape are not held against each other where the boat was afloat in between', () => {
  // The one afloat does not repeat itself, so it counts as no reading; the hull was in the water all the same.
  const between = reading('m', '03-05', -3, 0.1, 'afloat: yes').replace('gaps: top', 'gaps: top 1.00 mm, top')
  const text = job(reading('a', '03-01', -3, 0.1) + between + reading('b', '03-09', -3, 0.1))
  const { block, lookup } = blockIn(text, 'main.b')
  expect(readingInLog(block, lookup).against).toEqual({ type: 'hauled-out', since: 'a' })
})

it('a job with a reading in doubt cannot be as-built', () => {
  const log = reading('a', '03-01', -3, 0.3) + reading('b', '03-02', 3, -0.3)
  const found = (status: string) => findingsOf(job(log, `status: ${status}`), allChecks).findings
  const doubt = found('issued').find(({ check }) => check === 'alignment/move-had-another-effect')
  expect(doubt?.severity).toBe('warning')
  const open = (status: string) => found(status).filter(({ check }) => check === 'job/as-built-with-errors')
  expect(open('issued')).toEqual([])
  const [first] = open('as-built')
  expect(first?.related?.map(({ message }) => message)).toContain(doubt?.message)
})
