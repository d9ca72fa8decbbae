import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Correction, correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { formatTurns } from '../../../server/src/areas/alignment/plans/foot-words.ts'
import { type PlanJson, planJson } from '../../../server/src/areas/alignment/plans/plan-json.ts'
import { correctionMarkdown, correctionText } from '../../../server/src/areas/alignment/plans/words.ts'
import { blockIn } from '../job-text.ts'

interface Reading {
  readonly coupling?: string
  readonly bed?: string
  readonly gauge?: string
  readonly gaps: string
  readonly offsets?: string | undefined
}

const feet = `foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }`

const jobOf = (r: Reading): string => `drive main {
  coupling {
    ${r.coupling ?? 'flange-diameter: 100 mm\n    gap-variation: max 0.10 mm\n    offset: max 0.15 mm'}
  }
  bed {
    ${r.bed ?? `adjuster: stud-and-nuts\n    thread: M16\n    ${feet}`}
  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: ${r.gauge ?? '0.01 mm'}
    gaps: ${r.gaps}
    ${r.offsets ? `offsets: ${r.offsets}` : ''}
  }
}`

function correct(r: Reading): Correction {
  const { block, lookup } = blockIn(jobOf(r), 'main.dry-1')
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return outcome.value
}

const faultOf = (r: Reading): string | undefined => {
  const { block, lookup } = blockIn(jobOf(r), 'main.dry-1')
  const outcome = correctionOf(block, lookup)
  return outcome.ok ? undefined : outcome.fault.type
}

const plan = (r: Reading): PlanJson => planJson(correct(r))
const up = (p: PlanJson, foot: string): number =>
  p.feet.find((f) => f.name === foot)?.up_mm.value ?? Number.NaN
const inch = 25.4

describe('from the text of a job to its moves', () => {
  // Bloch & Geitner, Machinery Component Maintenance and Repair, pp. 193-198: gap 0.007 in wider at the bottom on 4 in, axis 0.0055 in high at
  // the coupling, inboard feet 9 in and outboard 39 in from it: -0.0212 in and -0.0738 in (the book's own rounding: 0.022 and 0.075 in).
  it('agrees with the published face-and-rim example', () => {
    const p = plan({
      coupling: 'flange-diameter: 4 in',
      bed: 'adjuster: shims\n    foot inboard { from-coupling: 9 in  across: 0 in }\n    foot outboard { from-coupling: 39 in  across: 0 in }',
      gauge: '0.0005 in',
      gaps: 'top 0.0965 in, starboard 0.1 in, bottom 0.1035 in, port 0.1 in',
      offsets: 'top 0.0055 in, starboard 0 in, bottom -0.0055 in, port 0 in',
    })
    expect(up(p, 'inboard') / inch).toBeCloseTo(-0.02125, 5)
    expect(up(p, 'outboard') / inch).toBeCloseTo(-0.07375, 5)
    expect(Math.abs(up(p, 'inboard') / inch + 0.022)).toBeLessThan(0.0025)
    expect(Math.abs(up(p, 'outboard') / inch + 0.075)).toBeLessThan(0.0025)
  })

  // Common practice, no source: loose at the top, the far end is low.
  it('raises the far feet when the coupling is loose at the top by 0.05 mm or more', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 60 }), (hundredths) => {
        const half = hundredths / 200
        const p = plan({
          gaps: `top ${(2 + half).toFixed(4)} mm, starboard 2 mm, bottom ${(2 - half).toFixed(4)} mm, port 2 mm`,
          offsets: 'top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm',
        })
        for (const foot of ['fwd-port', 'fwd-stbd']) expect(up(p, foot)).toBeGreaterThan(0)
        expect(up(p, 'fwd-port')).toBeGreaterThan(up(p, 'aft-port'))
        if (p.verdict === 'outside')
          expect(p.feet.find((f) => f.name === 'fwd-port')?.turns?.direction).toBe('up')
      }),
      { numRuns: 30 },
    )
  })

  it('turns port and starboard with the readings', () => {
    const gaps = 'top 1.9 mm, starboard 1.7 mm, bottom 1.7 mm, port 1.9 mm'
    const mirrored = 'top 1.9 mm, starboard 1.9 mm, bottom 1.7 mm, port 1.7 mm'
    const a = plan({ gaps, offsets: 'top 0.1 mm, starboard 0.2 mm, bottom -0.1 mm, port -0.2 mm' })
    const b = plan({ gaps: mirrored, offsets: 'top 0.1 mm, starboard -0.2 mm, bottom -0.1 mm, port 0.2 mm' })
    a.feet.forEach((foot, i) => {
      expect(b.feet[i]?.starboard_mm.value).toBeCloseTo(-foot.starboard_mm.value, 6)
      expect(b.feet[i]?.up_mm.value).toBeCloseTo(foot.up_mm.value, 6)
    })
  })

  it('says the same in inches as in millimetres', () => {
    const metric = plan({ gaps: 'top 2.54 mm, starboard 2.54 mm, bottom 2.286 mm, port 2.54 mm' })
    const inches = plan({ gaps: 'top 0.1 in, starboard 0.1 in, bottom 0.09 in, port 0.1 in' })
    expect(inches.feet).toEqual(metric.feet)
  })

  it('does not call a machine aligned whose offset was not read', () => {
    const level = 'top 1.8 mm, starboard 1.8 mm, bottom 1.8 mm, port 1.8 mm'
    const c = correct({ gaps: level })
    expect(c.verdict).toBe('undecided')
    expect(planJson(c).offset_mm).toBeNull()
    expect(c.assumptions.join()).toContain('offset was not read')
    expect(
      correct({
        gaps: level,
        coupling: 'flange-diameter: 100 mm\n    gap-variation: max 0.10 mm\n    pilot: yes',
      }).verdict,
    ).toBe('within')
  })

  it('leaves a machine within its limits alone', () => {
    const c = correct({
      gaps: 'top 1.81 mm, starboard 1.8 mm, bottom 1.79 mm, port 1.8 mm',
      offsets: 'top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm',
    })
    expect(c.verdict).toBe('within')
    expect(c.feet.map((foot) => foot.moved)).toEqual([0, 0, 0, 0])
  })

  // 0.001 in per inch of flange diameter: common practice (public boat-class alignment guides).
  it('assumes a limit and says so when none is stated', () => {
    const c = correct({
      coupling: 'flange-diameter: 100 mm',
      gaps: 'top 2 mm, starboard 1.8 mm, bottom 1.6 mm, port 1.8 mm',
    })
    expect(c.gapVariation.limit).toBeCloseTo(0.1e-3, 9)
    expect(c.assumptions.join()).toContain('0.001')
  })

  it('says what stands in the way rather than a number', () => {
    expect(faultOf({ gaps: 'top 1.9 mm, bottom 1.7 mm' })).toBe('too-few-angles')
    expect(faultOf({ gaps: 'top 1.9 mm, starboard 1.8 mm, bottom 1.7 mm' })).toBe('within-half-turn')
    const least = 'flange-diameter: 100 mm\n    gap-variation: min 0.10 mm'
    expect(faultOf({ coupling: least, gaps: 'top 2 mm, starboard 2 mm, bottom 2 mm, port 2 mm' })).toBe(
      'unreadable',
    )
    expect(faultOf({ gaps: 'top 25 mm, starboard 2 mm, bottom 1 mm, port 2 mm' })).toBe('slope-too-large')
    const oneStation = correct({
      gaps: 'top 1.9 mm, starboard 1.8 mm, bottom 1.7 mm, port 1.8 mm',
      bed: 'adjuster: shims\n    foot a { from-coupling: 1 m  across: 1 m port }\n    foot b { from-coupling: 1 m  across: 1 m starboard }',
    })
    expect(oneStation.feetFault?.type).toBe('feet-at-one-station')
    expect(oneStation.feet).toEqual([])
  })

  it('says readings that contradict each other before it says moves', () => {
    const c = correct({ gaps: 'top 1.92 mm, starboard 1.60 mm, bottom 1.92 mm, port 1.60 mm' })
    expect(c.closure.state).toBe('open')
    expect(correctionText(c, 'metric')).toContain('do not close')
    expect(correctionMarkdown(c, 'metric')).toContain('do not close')
  })

  it('warns when the nearest steps leave the machine outside', () => {
    const c = correct({
      coupling: 'flange-diameter: 100 mm\n    gap-variation: max 0.002 mm\n    offset: max 0.002 mm',
      gauge: '0.001 mm',
      gaps: 'top 1.92 mm, starboard 1.8 mm, bottom 1.68 mm, port 1.8 mm',
      offsets: 'top 0.05 mm, starboard 0 mm, bottom -0.05 mm, port 0 mm',
    })
    expect(c.predicted?.inside).toBe(false)
    expect(correctionText(c, 'metric')).toContain(
      'No steps that the adjusters can make bring the machine within',
    )
  })

  // By hand: half a flat aft and one and a half forward give gap variation 0.001 mm and offset 0.077 mm; each foot rounded alone gives 0.16 mm.
  it('chooses the half flats of all stations together', () => {
    const p = plan({
      coupling: 'flange-diameter: 100 mm\n    gap-variation: max 0.05 mm\n    offset: max 0.10 mm',
      bed: `adjuster: stud-and-nuts\n    thread: M16\n    ${feet.replaceAll('180 mm', '200 mm').replaceAll('560 mm', '600 mm')}`,
      gauge: '0.001 mm',
      gaps: 'top 2.0408 mm, starboard 2 mm, bottom 1.9592 mm, port 2 mm',
      offsets: 'top 0.0767 mm, starboard 0 mm, bottom -0.0767 mm, port 0 mm',
    })
    expect(p.feet.map(({ turns }) => turns?.flats)).toEqual([0.5, 0.5, 1.5, 1.5])
    expect(p.predicted?.gapVariation_mm.value).toBeCloseTo(0.0017, 3)
    expect(p.predicted?.offset_mm?.vertical.value).toBeCloseTo(0.0767, 3)
  })

  it('gives no moves from readings that do not close, neither of gaps nor of offsets', () => {
    for (const r of [
      {
        gaps: 'top 2.8 mm, starboard 2 mm, bottom 1.4 mm, port 2.06 mm',
        offsets: 'top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm',
      },
      {
        gaps: 'top 2 mm, starboard 2 mm, bottom 2 mm, port 2 mm',
        offsets: 'top 0.5 mm, starboard 0 mm, bottom 0.5 mm, port 0 mm',
      },
    ]) {
      const c = correct(r)
      expect(c.contradictory).toBe(true)
      expect(c.feet.map((foot) => foot.step.by)).toEqual(['none', 'none', 'none', 'none'])
      expect(c.predicted).toBeUndefined()
    }
  })

  it('takes out shims by thickness, since the pack that is there is not known', () => {
    const c = correct({
      bed: `adjuster: shims\n    shims: 0.05 mm, 0.1 mm, 0.2 mm\n    ${feet}`,
      gaps: 'top 1.8 mm, starboard 2 mm, bottom 2.2 mm, port 2 mm',
      offsets: 'top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm',
    })
    const step = planJson(c).feet[2]?.shims
    expect(step).toMatchObject({ action: 'take out', pieces_mm: [] })
    // 0.4 mm on 100 mm over 560 mm (arithmetic), as near as serves the coupling best in steps of 0.05 mm.
    expect(Math.abs((step?.thickness_mm ?? 0) - 2.24)).toBeLessThanOrEqual(0.05)
    expect(c.assumptions.join()).toContain('measure first')
  })

  it.each([
    [
      'put in',
      'top 1.92 mm, starboard 1.8 mm, bottom 1.66 mm, port 1.78 mm',
      /put in shims of 0\.\d\d \+ .* mm, together/,
    ],
    [
      'take out',
      'top 1.66 mm, starboard 1.8 mm, bottom 1.92 mm, port 1.78 mm',
      /take out shims of .*, or as near as/,
    ],
  ])('names the shims of the list to %s, and counts on what they make', (action, gaps, words) => {
    const c = correct({
      bed: `adjuster: shims\n    shims: 0.05 mm, 0.1 mm, 0.2 mm, 0.5 mm, 1 mm\n    ${feet}`,
      gaps,
    })
    for (const { step, vertical, moved } of c.feet) {
      if (step.by !== 'shims') expect.fail(step.by)
      expect(step.action).toBe(action)
      expect(step.pieces.reduce((sum, piece) => sum + piece, 0)).toBeCloseTo(Math.abs(moved), 9)
      // The pack that serves the coupling best need not be the nearest to each foot's own height.
      expect(Math.abs(vertical.value - moved)).toBeLessThanOrEqual(0.1e-3)
    }
    expect(c.predicted).toMatchObject({ inside: true, provable: true })
    expect(correctionText(c, 'metric')).toMatch(words)
  })

  it('counts turns as an installer would', () => {
    expect(formatTurns({ turns: 1, flats: 2 })).toBe('1 turn 2 flats')
    expect(formatTurns({ turns: 0, flats: 0.5 })).toBe('half a flat')
    expect(formatTurns({ turns: 0, flats: 1.5 })).toBe('1½ flats')
    expect(formatTurns({ turns: 1, flats: 0.5 })).toBe('1 turn half a flat')
    expect(formatTurns({ turns: 2, flats: 0 })).toBe('2 turns')
  })

  it('cautions wherever it tells someone to move a machine', () => {
    const c = correct({ gaps: 'top 1.92 mm, starboard 1.8 mm, bottom 1.66 mm, port 1.8 mm' })
    for (const text of [correctionText(c, 'metric'), correctionMarkdown(c, 'inch')])
      expect(text).toContain('Isolate and lock off')
  })
})
