// The work in the order that does not rock the machine: common practice, no source. Heights are those of the plan, by similar triangles.
import { describe, expect, it } from 'vitest'
import { logSchema } from '../../server/src/cli/log-schema.ts'
import { correctionOf } from '../../server/src/plans/alignment.ts'
import { logUpTo } from '../../server/src/plans/alignment-log.ts'
import { procedureLines } from '../../server/src/plans/alignment-procedure.ts'
import { logJson } from '../../server/src/plans/log-json.ts'
import { planText } from '../../server/src/plans/plan-text.ts'
import { blockIn } from './job-text.ts'

const nuts = 'adjuster: stud-and-nuts\n    thread: M16'
const open = 'top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm'
const down = 'top 1.66 mm, starboard 1.78 mm, bottom 1.92 mm, port 1.80 mm'

const driveOf = ({ bed = nuts, gaps = open, pack = '', more = '' } = {}): string => `drive main {
  coupling { flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  bed {
    ${bed}
    foot aft-port { from-coupling: 180 mm  across: 140 mm port ${pack} }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard ${pack} }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port ${pack} }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard ${pack} }
  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: ${gaps}
    offsets: top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm
  }
${more}}
`

function workOf(text: string, system: 'metric' | 'inch' = 'metric'): readonly string[] {
  const { block, lookup } = blockIn(text, 'main.dry-1')
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return procedureLines(outcome.value, system)
}
const placeOf = (lines: readonly string[], words: string): number => {
  const at = lines.findIndex((line) => line.includes(words))
  if (at < 0) throw new Error(`"${words}" is not in\n${lines.join('\n')}`)
  return at
}

describe('the work', () => {
  it.each(['metric', 'inch'] as const)('goes end by end, sideways last, then reads again: %s', (system) => {
    const lines = workOf(driveOf(), system)
    const order = [
      'Take the coupling bolts out',
      'Isolate and lock off the drive, prove it dead',
      'Slacken the upper nuts at fwd-port and fwd-stbd, far enough to let the feet up',
      'At fwd-port and fwd-stbd turn the lower nut counter-clockwise, seen from above, 3½ flats',
      'Tighten the upper nuts at fwd-port and fwd-stbd before other feet are touched',
      'Slacken the upper nuts at aft-port and aft-stbd',
      'At aft-port and aft-stbd turn the lower nut counter-clockwise, seen from above, 1 flat (',
      'Tighten the upper nuts at aft-port and aft-stbd',
      'Sideways last',
      'Tighten all nuts to the torque',
      'Read again',
    ].map((words) => placeOf(lines, words))
    expect(order).toEqual([...order].sort((a, b) => a - b))
    const numbers = lines.flatMap((line) => /^ *(\d+)\. /.exec(line)?.[1] ?? [])
    expect(numbers).toEqual(numbers.map((_, i) => String(i + 1)))
  })

  it('says how far, in the units of the job', () => {
    // 3½ flats of 2 mm a turn: 3.5 × 2 / 6 = 1.17 mm = 0.0459 in.
    expect(workOf(driveOf()).join('\n')).toContain(
      '3½ flats (up 1.17 mm), in 2 passes of not more than 2 flats',
    )
    const inch = workOf(driveOf(), 'inch').join('\n')
    expect(inch).toContain('3½ flats (up 0.0459 in)')
    expect(inch).not.toContain(' mm')
    expect(workOf(driveOf()).join('\n')).toContain('gap variation at most 0.10 mm, offset at most 0.15 mm')
  })

  it('lowers the other way round', () => {
    const lines = workOf(driveOf({ gaps: down })).join('\n')
    expect(lines).toMatch(/fwd-stbd turn the lower nut clockwise, seen from above, .*\(down /)
    expect(lines).toContain('Slacken the upper nuts at fwd-port and fwd-stbd; leave')
  })

  it('with shims lifts one end at a time, and never with fingers under it', () => {
    const bed = 'adjuster: shims\n    shims: 0.05 mm, 0.1 mm, 0.2 mm, 0.5 mm, 1 mm'
    const lines = workOf(driveOf({ bed, pack: ' pack: 1 mm' }))
    const order = [
      'At fwd-port and fwd-stbd slacken the bolts',
      'keep hands and fingers from under it',
      'At fwd-port and fwd-stbd put in shims of',
      'Tighten the bolts at fwd-port and fwd-stbd',
      'At aft-port and aft-stbd slacken the bolts',
    ].map((words) => placeOf(lines, words))
    expect(order).toEqual([...order].sort((a, b) => a - b))
    expect(lines.join('\n')).not.toContain('nut')
  })

  it('is none where nothing is to be moved, or no steps are given', () => {
    const straight = 'top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm'
    expect(workOf(driveOf({ gaps: straight }))).toEqual([])
    expect(
      workOf(driveOf({ more: '  move after dry-1 { fwd-port: up 1 flat  fwd-stbd: up 1 flat }\n' })),
    ).toEqual([])
  })
})

describe('the text of a plan', () => {
  const textOf = (text: string, name: string): string => {
    const { block, lookup } = blockIn(text, `main.${name}`)
    const outcome = correctionOf(block, lookup)
    return outcome.ok ? planText(outcome.value, logUpTo(block, lookup), 'metric') : outcome.fault.words
  }
  const second = `  move after dry-1 { fwd-port: up 1 flat  fwd-stbd: up 1 flat }
  reading dry-2 {
    taken: 2026-03-05
    gauge: 0.02 mm
    gaps: ${open}
    offsets: top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm
  }
`

  it('has the readings that led there, where there are several', () => {
    expect(textOf(driveOf(), 'dry-1')).not.toContain('Readings of')
    const text = textOf(driveOf({ more: second }), 'dry-2')
    expect(text).toMatch(
      /Readings of main:\n +dry-1 .*\n +then fwd-port, fwd-stbd up 1 flat\n +dry-2 .*outside\n +! The moves/,
    )
    expect(text).toContain('Either nothing moved: was this read before the move was made')
  })

  it('has the same as data, as its schema says', () => {
    const { block, lookup } = blockIn(driveOf({ more: second }), 'main.dry-2')
    const log = logSchema.parse(logJson(logUpTo(block, lookup)))
    expect(log.map(({ reading }) => reading)).toEqual(['dry-1', 'dry-2'])
    expect(log[0]?.movedAfter).toEqual([
      { foot: 'fwd-port', move: 'up 1 flat' },
      { foot: 'fwd-stbd', move: 'up 1 flat' },
    ])
    // One flat of 2 mm: 0.333 mm over 380 mm on a circle of 110 mm takes 0.0965 mm off the 0.26 mm.
    expect(log[1]?.against).toMatchObject({
      type: 'compared',
      since: 'dry-1',
      noise: false,
      predicted: { opening_mm: { vertical: { value: expect.closeTo(0.26 - 0.0965, 3) } } },
      found: { opening_mm: { vertical: { value: expect.closeTo(0.26, 6) } } },
      explanations: expect.arrayContaining([{ type: 'nothing-moved' }]),
    })
  })
})
