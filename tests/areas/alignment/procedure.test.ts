// The work in the order that does not rock the machine: common practice, no source. Heights are those of the plan, by similar triangles.
import { describe, expect, it } from 'vitest'
import { logSchema } from '../../../server/src/areas/alignment/commands/log-schema.ts'
import { drivePlanSchema } from '../../../server/src/areas/alignment/commands/plan-schema.ts'
import {
  type Correction,
  correctionOf,
  withhold,
} from '../../../server/src/areas/alignment/plans/correction.ts'
import { logUpTo } from '../../../server/src/areas/alignment/plans/log.ts'
import { logJson } from '../../../server/src/areas/alignment/plans/log-json.ts'
import { planJson } from '../../../server/src/areas/alignment/plans/plan-json.ts'
import { planText } from '../../../server/src/areas/alignment/plans/plan-text.ts'
import { procedureLines } from '../../../server/src/areas/alignment/plans/procedure.ts'
import { correctionText } from '../../../server/src/areas/alignment/plans/words.ts'
import { blockIn } from '../job-text.ts'

const nuts = 'adjuster: stud-and-nuts\n    thread: M16'
const open = 'top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm'
const down = 'top 1.66 mm, starboard 1.78 mm, bottom 1.92 mm, port 1.80 mm'

const round = 'top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm'
const middle = `foot mid-port { from-coupling: 380 mm  across: 140 mm port }
    foot mid-stbd { from-coupling: 380 mm  across: 140 mm starboard }`

const driveOf = ({
  bed = nuts,
  gaps = open,
  offsets = round,
  pack = '',
  bolts = '',
  feet = '',
  more = '',
} = {}): string => `drive main {
  coupling { ${bolts} flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  bed {
    ${bed}
    foot aft-port { from-coupling: 180 mm  across: 140 mm port ${pack} }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard ${pack} }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port ${pack} }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard ${pack} }
    ${feet}
  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: ${gaps}
    offsets: ${offsets}
  }
${more}}
`

function correctionIn(text: string): Correction {
  const { block, lookup } = blockIn(text, 'main.dry-1')
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return outcome.value
}
const workOf = (text: string, system: 'metric' | 'inch' = 'metric'): readonly string[] =>
  procedureLines(correctionIn(text), system)
const placeOf = (lines: readonly string[], words: string): number => {
  const at = lines.findIndex((line) => line.includes(words))
  if (at < 0) throw new Error(`"${words}" is not in\n${lines.join('\n')}`)
  return at
}

describe('the work', () => {
  it.each(['metric', 'inch'] as const)(
    'makes safe first, then sets, fastens and reads again: %s',
    (system) => {
      const lines = workOf(driveOf(), system)
      const order = [
        '1. Isolate the drive and lock it off.',
        '2. Secure the shaft',
        'the boat floods',
        '3. Part the coupling. Mark both flanges first',
        '4. Put a jack or a hoist in place near the centre of gravity',
        system === 'metric'
          ? 'Slacken all upper nuts by 3 flats (1.00 mm) at aft-port and aft-stbd, 5 flats (1.67 mm) at fwd-port and fwd-stbd'
          : 'Slacken all upper nuts by 3 flats (0.0394 in) at aft-port and aft-stbd',
        'Turn the lower nuts in this order, a flat at a time, alternating between the feet of a pair',
        'pass 1: fwd-port and fwd-stbd up 2 flats; then aft-port and aft-stbd up half a flat',
        'pass 2: fwd-port and fwd-stbd up 1½ flats; then aft-port and aft-stbd up half a flat',
        'Sideways: run the upper nuts down again until the feet just slide',
        'Slacken all upper nuts once more, but not the lower ones, and let the machine settle',
        'Tighten the upper nuts crosswise (aft-port, fwd-stbd, aft-stbd, fwd-port) to the torque',
        'After the final torque, read again',
        'Join the coupling only when a reading proves it within',
      ].map((words) => placeOf(lines, words))
      expect(order).toEqual([...order].sort((a, b) => a - b))
      const numbers = lines.flatMap((line) => /^ *(\d+)\. /.exec(line)?.[1] ?? [])
      expect(numbers).toEqual(numbers.map((_, i) => String(i + 1)))
      expect(numbers.length).toBeLessThanOrEqual(12)
      // Nothing of the coupling before the drive is dead and the shaft held.
      for (const line of lines.slice(0, placeOf(lines, '3. Part'))) expect(line).not.toMatch(/\bbolts\b/)
      // Each caution once.
      const cautions = lines.filter((line) => line.includes('Caution:'))
      expect(new Set(cautions).size).toBe(cautions.length)
    },
  )

  it('never leaves a foot clamped while another is set', () => {
    // Six feet, as a machine with three stations has them: 5 flats of 2 mm a turn, 1.67 mm.
    const text = workOf(driveOf({ more: '', feet: middle })).join('\n')
    expect(text).not.toMatch(/other feet clamped|before other feet|leave the other feet/)
    expect(text).toContain('5 flats (1.67 mm) at fwd-port and fwd-stbd')
    expect(text).toContain(', no more: they keep the machine from falling')
    expect(text).toContain('then mid-port and mid-stbd up 1 flat')
    // The middle is run up to the line of the ends: 0.333 + 0.833 × 200 / 380 = 0.772 mm, of which 0.333 mm in the first pass.
    expect(text).toContain('then mid-port and mid-stbd up until they just touch, about 1¼ flats')
    expect(text).toContain('lower nuts alone: the machine rests on them')
  })

  it('does not say how far a foot between goes where that is next to nothing', () => {
    // The far end goes up 2 flats, 0.667 mm, about the aft feet at 180 mm: 1.754 mrad, 0.193 mm on 110 mm, and the flange stands 0.316 mm high. At 200 mm
    // that is 0.035 mm, a tenth of a flat (similar triangles).
    const text = workOf(
      driveOf({
        gaps: 'top 1.90 mm, starboard 1.80 mm, bottom 1.70 mm, port 1.80 mm',
        offsets: 'top 0.32 mm, starboard 0 mm, bottom -0.32 mm, port 0 mm',
        feet: middle.replaceAll('380 mm', '200 mm'),
      }),
    ).join('\n')
    expect(text).toMatch(
      /fwd-port and fwd-stbd up 2 flats; then mid-port and mid-stbd up until they just touch$/m,
    )
  })

  it('names the upper nuts, where the bed has only a thread to say that there are any', () => {
    const text = workOf(driveOf({ bed: 'thread: M16' })).join('\n')
    expect(text).toContain('Slacken all upper nuts by 3 flats')
    expect(text).not.toContain('fastenings')
  })

  it('leads to the same reading with feet between the ends, which are carried along', () => {
    const expected = (feet: string) => planJson(correctionIn(driveOf({ feet }))).predicted
    expect(expected(middle)).toEqual(expected(''))
    expect(expected('')).not.toBeNull()
  })

  it('says how far, in the units of the job', () => {
    // 1.5 flats up are not said as a length; the slack is, of 5 flats of 2 mm a turn: 5 × 2 / 6 = 1.67 mm = 0.0656 in.
    expect(workOf(driveOf()).join('\n')).toContain('5 flats (1.67 mm)')
    const inch = workOf(driveOf(), 'inch').join('\n')
    expect(inch).toContain('5 flats (0.0656 in)')
    expect(inch).not.toContain(' mm')
    expect(workOf(driveOf()).join('\n')).toContain('gap variation at most 0.10 mm, offset at most 0.15 mm')
  })

  it('says once which way the nuts turn', () => {
    expect(
      workOf(driveOf())
        .join('\n')
        .match(/Seen from above, up is counter-clockwise\./g),
    ).toHaveLength(1)
    const lines = workOf(driveOf({ gaps: down })).join('\n')
    expect(lines).toContain('Seen from above, down is clockwise.')
    expect(lines).toMatch(/fwd-port and fwd-stbd down 1½ flats/)
    const left = workOf(driveOf({ bed: 'adjuster: stud-and-nuts\n    thread: "M16 LH"' })).join('\n')
    expect(left).toContain('Seen from above, up is clockwise.')
  })

  it('has passes without a thread too, in lengths that add up', () => {
    const text = workOf(driveOf({ bed: 'adjuster: stud-and-nuts' })).join('\n')
    const sum = (foot: string) =>
      [...text.matchAll(new RegExp(`${foot} up (\\d\\.\\d\\d) mm`, 'g'))].reduce(
        (all, [, by]) => all + Number(by),
        0,
      )
    // -(oz + tv x): 2.364 mrad, 0.055 mm high (as read).
    expect(sum('fwd-stbd')).toBeCloseTo(2.3636 * 0.56 - 0.055, 2)
    expect(sum('aft-stbd')).toBeCloseTo(2.3636 * 0.18 - 0.055, 2)
    expect(text).toContain('2.0 mm at fwd-port and fwd-stbd')
    expect(text).toContain('0.25 mm at a time, alternating between the feet of a pair')
    expect(text).not.toContain('flat')
  })

  it('with shims changes one pack after the other, and never with fingers under it', () => {
    const bed = 'adjuster: shims\n    shims: 0.05 mm, 0.1 mm, 0.2 mm, 0.5 mm, 1 mm'
    const lines = workOf(driveOf({ bed, pack: ' pack: 1 mm' }))
    const order = [
      'Slacken all bolts by',
      'Change the packs in this order, one end at a time',
      'fwd-port and fwd-stbd: lift 2.5 mm, then pack from 1.00 to 2.20 mm: put in shims of 1.00 + 0.20 mm, together 1.20 mm',
      'aft-port and aft-stbd: lift 1.5 mm, then pack from 1.00 to',
      'keep hands and fingers from under it',
      'Tighten the bolts crosswise',
    ].map((words) => placeOf(lines, words))
    expect(order).toEqual([...order].sort((a, b) => a - b))
    expect(lines.join('\n')).not.toContain('nut')
    const thinner = workOf(driveOf({ bed, pack: ' pack: 2.5 mm', gaps: down })).join('\n')
    expect(thinner).toContain(
      'fwd-port and fwd-stbd: lift 1.0 mm, then pack from 2.50 to 1.10 mm: shims of 1.00 + 0.10 mm',
    )
  })

  it('slides against two dials, and calls it last only where it is', () => {
    const gaps = 'top 1.80 mm, starboard 1.92 mm, bottom 1.80 mm, port 1.68 mm'
    const offsets = 'top 0 mm, starboard 0.10 mm, bottom 0 mm, port -0.10 mm'
    const lines = workOf(driveOf({ gaps, offsets }))
    const text = lines.join('\n')
    expect(text).toContain('Sideways: slacken all upper nuts until the feet just slide')
    // th = (1.68 - 1.92) / 110 = -2.182 mrad; 0.10 to starboard: -(0.10 - 2.182 x).
    expect(text).toContain(
      'until the dials show 0.29 mm to starboard at aft-port or aft-stbd, 1.12 mm to starboard at fwd-port or fwd-stbd',
    )
    expect(text).toContain('they must not move')
    expect(text).not.toMatch(/pass \d|Turn the lower nuts|Sideways last/)
  })

  it('tightens to the torques that the job has, else to those of the makers', () => {
    const makers = workOf(driveOf()).join('\n')
    expect(makers).toContain('the torque specified by the maker of the machine or its mounts')
    expect(makers).toContain('crosswise to the torque specified by the maker of the coupling')
    const bed = `${nuts}\n    torque: 120 N·m\n    lower-torque: 60 N·m`
    const stated = workOf(driveOf({ bed, bolts: 'bolts: 4 x M10 class 8.8, 45 N·m' }))
    const text = stated.join('\n')
    expect(text).toContain('to 120 N·m, in three rounds: one third, two thirds, then all of it')
    expect(text).toContain('Then tighten the lower nuts to 60 N·m')
    expect(stated.at(-1)).toContain('bolts crosswise to 45 N·m (4 x M10)')
    // 120 N·m / 1.3558 N·m.
    expect(workOf(driveOf({ bed }), 'inch').join('\n')).toContain('to 88.51 lbf·ft, in three rounds')
  })

  it('asks for a reading afloat unless this one is', () => {
    const gaps = 'top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm'
    const joined = (afloat: string) =>
      workOf(driveOf({ gaps }).replace('gauge: 0.02 mm', `gauge: 0.02 mm\n    ${afloat}`)).join('\n')
    expect(joined('')).toContain('If this reading was taken dry, read again afloat.')
    expect(joined('afloat: no')).toContain('This reading was taken dry: read again afloat.')
    expect(joined('afloat: yes')).toContain('Join the coupling')
    expect(joined('afloat: yes')).not.toContain('dry')
  })

  it('is to join the coupling where nothing is to be moved, and none where no steps are given', () => {
    const straight = 'top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm'
    const within = workOf(driveOf({ gaps: straight }))
    expect(within.join('\n')).toMatch(
      /1\. Isolate .*\n.*Caution: .*\n +2\. Join the coupling with its marks in line/,
    )
    expect(within.join('\n')).not.toMatch(/[Tt]ake out the bolts|Slacken|Turn/)
    expect(
      workOf(
        driveOf({
          more: '  move after dry-1 { done: 2026-03-04  fwd-port: up 1 flat  fwd-stbd: up 1 flat }\n',
        }),
      ),
    ).toEqual([])
  })

  it('is data as well', () => {
    const { work, feet } = drivePlanSchema.parse({ ...planJson(correctionIn(driveOf())), log: [] })
    // The lower nut of a right-hand thread goes up counter-clockwise, seen from above (ISO 261).
    expect(feet.find(({ name }) => name === 'fwd-port')?.turns).toEqual({
      nut: 'lower',
      direction: 'up',
      seenFromAbove: 'counter-clockwise',
      turns: 0,
      flats: 3.5,
    })
    expect(work?.passes[0]).toEqual([
      { feet: ['fwd-port', 'fwd-stbd'], up_mm: expect.closeTo(0.6667, 4), flats: 2 },
      { feet: ['aft-port', 'aft-stbd'], up_mm: expect.closeTo(0.1667, 4), flats: 0.5 },
    ])
    // Before the aft end follows in the second pass: (3.5 - 0.5) flats over 380 mm.
    expect(work?.tilt_mrad).toBeCloseTo((3 * 2) / 6 / 0.38, 3)
    expect(work?.slack).toContainEqual({ foot: 'fwd-port', slack_mm: expect.closeTo(1.6667, 4) })
    const shims = 'adjuster: shims\n    shims: 0.05 mm, 0.1 mm, 0.2 mm, 0.5 mm, 1 mm'
    const packed = drivePlanSchema.parse({
      ...planJson(correctionIn(driveOf({ bed: shims, pack: ' pack: 2.5 mm', gaps: down }))),
      log: [],
    })
    expect(packed.work?.packs[0]).toEqual({ feet: ['fwd-port', 'fwd-stbd'], up_mm: -1.4, lift_mm: 1 })
    expect(packed.feet.at(-1)?.shims).toMatchObject({ action: 'make', from_mm: 2.5, thickness_mm: 1.1 })
  })
})

describe('a machine far off', () => {
  const far = {
    gaps: 'top 6.92 mm, starboard 4.80 mm, bottom 2.66 mm, port 4.78 mm',
    offsets: 'top -8 mm, starboard -12 mm, bottom 8 mm, port 12 mm',
  }

  it('is aligned roughly first, by straightedge and rule, and gets no fine steps', () => {
    const c = correctionIn(driveOf(far))
    expect(c).toMatchObject({ verdict: 'outside', withheld: 'far-off' })
    expect(drivePlanSchema.parse({ ...planJson(c), log: [] })).toMatchObject({
      withheld: 'far-off',
      predicted: null,
      work: null,
    })
    const text = procedureLines(c, 'metric').join('\n')
    expect(text).toMatch(/1\. Check the figures first.*wrong figure/)
    expect(text).toContain('straightedge across both rims')
    // -(oz + tv x), oz = -8, tv = (2.66 - 6.92) / 110: 14.97 and 29.69 mm; sideways -(oy + th x), oy = -12: 12.03 and 12.10 mm.
    expect(text).toContain('aft-port and aft-stbd up 15.0 mm and 12.0 mm to starboard')
    expect(text).toContain('fwd-port and fwd-stbd up 29.5 mm and 12.0 mm to starboard')
    expect(text).toMatch(/take a new reading/)
    expect(text).not.toMatch(/flat|pass \d|dial/)
    expect(correctionText(c, 'metric')).toContain('no step is given')
    expect(procedureLines(c, 'inch').join('\n')).toContain('up 0.58 in and 0.48 in to starboard')
  })

  it('gives way to whatever speaks against its figures', () => {
    const c = correctionIn(driveOf(far))
    expect(withhold(c, 'errors').withheld).toBe('errors')
    const wild = { ...far, gaps: far.gaps.replace('4.78', '6.78') }
    expect(correctionIn(driveOf(wild)).withheld).toBe('contradictory')
  })

  it('begins beyond 5 mm', () => {
    // By the slope alone: 5 mm at 560 mm is 8.93 mrad, 0.98 mm over 110 mm.
    const at = (more: string) =>
      correctionIn(
        driveOf({
          gaps: `top ${more} mm, starboard 2.30 mm, bottom 1.80 mm, port 2.30 mm`,
          offsets: 'top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm',
        }),
      ).withheld
    expect(at('2.77')).toBeUndefined()
    expect(at('2.79')).toBe('far-off')
  })
})

describe('the text of a plan', () => {
  const textOf = (text: string, name: string): string => {
    const { block, lookup } = blockIn(text, `main.${name}`)
    const outcome = correctionOf(block, lookup)
    return outcome.ok ? planText(outcome.value, logUpTo(block, lookup), 'metric') : outcome.fault.words
  }
  const second = `  move after dry-1 { done: 2026-03-04  fwd-port: up 1 flat  fwd-stbd: up 1 flat }
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
      /Readings of main:\n +dry-1 .*\n +then fwd-port, fwd-stbd up 1 flat\n +dry-2 .*outside\n +! Expected, from the moves since dry-1: /,
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
