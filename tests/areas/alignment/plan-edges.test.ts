// Plans at the edge of what they may say: what is taken for granted, what is refused, and what comes first. Geometry where figures are given; the rest is
// common practice, no source.
import { describe, expect, it } from 'vitest'
import { correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { readingInLog } from '../../../server/src/areas/alignment/plans/log.ts'
import { planJson } from '../../../server/src/areas/alignment/plans/plan-json.ts'
import { warningsOf } from '../../../server/src/areas/alignment/plans/warnings.ts'
import { correctionText } from '../../../server/src/areas/alignment/plans/words.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { blockIn } from '../job-text.ts'
import { feet, flat, job } from './move-discrepancy-jobs.ts'

const level = 'top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm'
const centred = 'top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm'
const nuts = 'adjuster: stud-and-nuts  thread: M16'
const driveOf = ({
  bed = nuts,
  gaps = level,
  offsets = centred,
  gauge = '0.02 mm',
  aft = '',
  fwd = '',
} = {}) =>
  `drive main {
  coupling { flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  bed {
    ${bed}
    foot aft-port { from-coupling: 180 mm  across: 140 mm port  ${aft} }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard  ${aft} }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port  ${fwd} }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard  ${fwd} }
  }
  reading a { taken: 2026-03-04  gauge: ${gauge}
    gaps: ${gaps}
    offsets: ${offsets}
  }
}
`
function correct(text: string) {
  const { block, lookup } = blockIn(text, 'main.a')
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return outcome.value
}
const planned = (of: Parameters<typeof driveOf>[0]) => correct(driveOf(of))

describe('growth', () => {
  const silent = 'a foot without a growth does not rise when hot, although others do'

  it('of some feet alone says what is taken of the others', () => {
    expect(planned({ fwd: 'growth: 0.20 mm' }).assumptions).toContain(silent)
    expect(planned({ aft: 'growth: 0 mm', fwd: 'growth: 0.20 mm' }).assumptions).not.toContain(silent)
    expect(planned({}).assumptions).not.toContain(silent)
  })

  // Geometry: how far an axis tilts cannot be seen from one station.
  it('of feet at one station is left out, and said to be', () => {
    const { assumptions, target } = correct(
      driveOf({ fwd: 'growth: 0.20 mm' }).replaceAll('560 mm', '180 mm'),
    )
    expect(assumptions).toContain(
      'the growth of the feet is left out: their places do not show how the axis rises',
    )
    expect(target).toBeUndefined()
  })
})

describe('a move of more than a metre', () => {
  // 7.2 mm over 110 mm is 65 mrad: 1.3 m at 20 m.
  it.each([
    ['sideways', 'top 1.80 mm, starboard 9.00 mm, bottom 1.80 mm, port 1.80 mm'],
    ['up', 'top 9.00 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm'],
  ])('is a figure written wrongly: %s', (_, gaps) => {
    const text = driveOf({ gaps }).replaceAll('560 mm', '20 m')
    const { block, lookup } = blockIn(text, 'main.a')
    const outcome = correctionOf(block, lookup)
    const fault = outcome.ok ? outcome.value.feetFault : outcome.fault
    expect(fault?.words).toMatch(
      /would have to move 1\.\d+ m .*: its from-coupling, or one of the gaps, is wrong/,
    )
  })
})

describe('a fact of the bed that gives impossible moves', () => {
  const level20 = driveOf().replaceAll('560 mm', '20 m')
  const after = `  reading b { taken: 2026-03-05  gauge: 0.02 mm
    gaps: top 9.00 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
  }
`
  const marked = (text: string) =>
    findingsOf(text, allChecks)
      .findings.filter(({ check }) => check === 'alignment/gaps-impossible')
      .map(({ at }) => at.section.text.slice(at.span.start, at.span.end))

  // 7.2 mm over 110 mm is 65 mrad: 1.3 m at 20 m. Level faces ask for no move, however far a foot is.
  it('is found once, also where the first reading can do with it', () => {
    const later = level20.replace(/\}\n$/, `${after}}\n`)
    expect(marked(level20)).toEqual([])
    expect(marked(later)).toEqual(['20 m'])
    expect(marked(later.replace(/\}\n$/, `${after.replace('reading b', 'reading c')}}\n`))).toEqual(['20 m'])
  })
})

describe('gaps that lie within half a turn', () => {
  it.each([
    ['top 1.9 mm, starboard 1.8 mm, bottom 1.7 mm', 'from bottom round to top'],
    ['bottom 1.9 mm, port 1.8 mm, top 1.7 mm', 'from top round to bottom'],
  ])('of %s: it is said where nothing was read', (gaps, where) => {
    const { block, lookup } = blockIn(driveOf({ gaps }), 'main.a')
    const outcome = correctionOf(block, lookup)
    expect(outcome.ok ? '' : outcome.fault.words).toContain(`Nothing was read ${where}.`)
  })
})

describe('what is said of each foot', () => {
  const rows = (of: Parameters<typeof driveOf>[0]) =>
    correctionText(planned(of), 'metric')
      .split('\n')
      .filter((line) => / {2}(?:aft|fwd)-(?:port|stbd) {2}/.test(line))
  const aside = 'top 0 mm, starboard 2 mm, bottom 0 mm, port -2 mm'

  it('of a machine within its limits is to leave it, whatever would remain', () => {
    const lines = rows({ gaps: 'top 1.83 mm, starboard 1.80 mm, bottom 1.77 mm, port 1.80 mm' })
    expect(lines).toHaveLength(4)
    // 0.06 mm on 110 mm, at 180 mm: 0.10 mm (similar triangles).
    expect(lines[0]).toContain('up 0.10')
    for (const line of lines) expect(line).toContain('  leave as it is  ')
  })

  it('sideways is the whole correction where the holes allow it, and else how far they do', () => {
    for (const line of rows({ offsets: aside })) expect(line).toMatch(/sideways 2\.00 ± 0\.0\d mm to port$/)
    for (const line of rows({ offsets: aside, aft: 'hole-clearance: 1 mm', fwd: 'hole-clearance: 1 mm' }))
      expect(line).toContain('as far as the holes allow (full correction: 2.00')
  })

  // The aft feet go s, the forward ones as much less as the gap allows: 0.10 mm on 110 mm is 0.909 mrad. The flange, 180 mm from the aft feet, goes s + 0.164 mm,
  // and has to go 2 - 0.15 mm: s is 1.686 mm (similar triangles).
  it('and what holes would do is data too', () => {
    const holes = 'hole-clearance: 1 mm'
    expect(planJson(planned({ offsets: aside, aft: holes, fwd: holes })).ways).toEqual([
      ['aft-port', 'aft-stbd', 'fwd-port', 'fwd-stbd'].map((foot) => ({
        type: 'hole-clearance',
        foot,
        clearance_mm: 1.69,
      })),
    ])
  })
})

describe('what withholds the steps comes first', () => {
  // 0.10 mm of gap against 0.10 mm: no gauge decides.
  const near = { gaps: 'top 1.85 mm, starboard 1.80 mm, bottom 1.75 mm, port 1.80 mm' }

  it('a reading that decides nothing, where every move is less than U', () => {
    const c = planned({ ...near, gauge: '0.5 mm' })
    expect(c).toMatchObject({ verdict: 'undecided', withheld: 'unsure' })
    expect(warningsOf({ ...c, moveDiscrepancy: 'The moves had another effect.' }, 'metric')[0]).toMatch(
      /^At every foot, U is larger/,
    )
  })

  // The slope of 0.10 mm over 110 mm is 0.5 mm at the feet at 560 mm, far above the U of a gauge of 0.02 mm.
  it.each([
    ['up', near.gaps],
    ['sideways', 'top 1.80 mm, starboard 1.85 mm, bottom 1.80 mm, port 1.75 mm'],
  ])('nothing, where a move is seen in one plane alone: %s', (_, gaps) => {
    const c = planned({ gaps })
    expect(c).toMatchObject({ verdict: 'undecided' })
    expect(c.withheld).toBeUndefined()
  })

  it('a move discrepancy, where it is that', () => {
    const c = planned({ ...near, gauge: '0.5 mm' })
    const withDiscrepancy = {
      ...c,
      moveDiscrepancy: 'The moves had another effect.',
      withheld: 'another-effect',
    } as const
    expect(warningsOf(withDiscrepancy, 'metric')[0]).toBe('The moves had another effect.')
  })
})

it('two rims depend on no gauge circle, so none is blamed for slopes of half their size', () => {
  // A gauge on a circle of 55 mm where the file says 110 mm shows half of each slope, and the offsets as they are.
  const faces = job(feet('up 1 flat', 'up 3 flats'), [flat, 3 * flat], [0, 0], { circle: 55 })
  // The same slopes and offsets by dials on two rims 150 mm apart.
  const rims = faces.replace(
    /gaps: top (\S+) mm, .*\n\s*offsets: top (\S+) mm, .*/g,
    (_, gap: string, offset: string) => {
      const far = -(Number(offset) - (150 * (2 - Number(gap))) / 55)
      const round = (half: number) =>
        `top ${(2 * half).toFixed(3)} mm, starboard ${half.toFixed(3)} mm, bottom 0 mm, port ${half.toFixed(3)} mm`
      return `bar-droop: 0 mm
    dial-carried-by: shaft
    rim-dial: ${round(Number(offset))}
    rim-dial-at: 0 mm
    reverse-dial: ${round(far)}
    reverse-dial-at: -150 mm`
    },
  )
  const named = (text: string) => {
    const { block, lookup } = blockIn(text, 'main.r2')
    const { against } = readingInLog(block, lookup)
    if (against?.type !== 'compared') throw new Error('not compared')
    expect(against.mismatch.noise).toBe(false)
    return against.mismatch.explanations.map(({ hypothesis: { type } }) => type)
  }
  expect(named(faces)).toContain('other-gauge-diameter')
  expect(named(rims)).not.toContain('other-gauge-diameter')
})

describe('shims', () => {
  it('go no further down at a foot than its own pack allows', () => {
    // The flange stands 1 mm high: every foot is wanted 1 mm down, and the forward ones stand on 0.5 mm.
    const high = { offsets: 'top 1 mm, starboard 0 mm, bottom -1 mm, port 0 mm' }
    const { feet: chosen } = planned({
      bed: 'adjuster: shims  shims: 0.1 mm, 0.5 mm',
      ...high,
      aft: 'pack: 2 mm',
      fwd: 'pack: 0.5 mm',
    })
    for (const { name, moved } of chosen) {
      if (name.startsWith('fwd')) expect(moved).toBeGreaterThanOrEqual(-0.5e-3 - 1e-9)
      else expect(moved).toBeLessThan(-0.5e-3)
    }
  })

  it('leave no foot between the ends off their line by what makes it soft', () => {
    // Wanted are 0 mm aft and 0.5 mm forward, so 0.25 mm between them, and there are shims of 0.5 mm alone.
    const text = driveOf({
      bed: 'adjuster: shims  shims: 0.5 mm',
      gaps: 'top 1.872 mm, starboard 1.80 mm, bottom 1.728 mm, port 1.80 mm',
      offsets: 'top 0.237 mm, starboard 0 mm, bottom -0.237 mm, port 0 mm',
    }).replace(
      '    foot fwd-port',
      `    foot mid-port { from-coupling: 370 mm  across: 140 mm port }
    foot mid-stbd { from-coupling: 370 mm  across: 140 mm starboard }
    foot fwd-port`,
    )
    const { feet: chosen } = correct(text)
    expect(chosen.map(({ vertical }) => vertical.value * 1e3)).toEqual(
      [0, 0, 0.25, 0.25, 0.5, 0.5].map((up) => expect.closeTo(up, 1)),
    )
    const [aft = 0, , mid = 0, , fwd = 0] = chosen.map(({ moved }) => moved)
    expect(Math.abs(mid - (aft + fwd) / 2)).toBeLessThanOrEqual(0.05e-3)
  })

  it('that leave the offset near its limit prove nothing, however wide that of the gaps is', () => {
    // 0.24 mm high. Aft goes down by the 0.08 mm it has: 0.24 - 0.08 x 560/380 = 0.122 mm of 0.15 mm.
    const { predicted } = correct(
      driveOf({
        bed: 'adjuster: shims  shims: 0.08 mm',
        gauge: '0.05 mm',
        offsets: 'top 0.24 mm, starboard 0 mm, bottom -0.24 mm, port 0 mm',
        aft: 'pack: 0.08 mm  travel-up: 0 mm',
        fwd: 'pack: 0 mm  travel-up: 0 mm',
      }).replace('gap-variation: max 0.10 mm', 'gap-variation: max 1 mm'),
    )
    expect(predicted?.fromTarget.offset).toBeCloseTo(0.122e-3, 6)
    expect([predicted?.inside, predicted?.provable]).toEqual([true, false])
  })
})

it('travel that is missing is said the way it is missing', () => {
  const open = { gaps: 'top 1.65 mm, starboard 1.80 mm, bottom 1.95 mm, port 1.80 mm' }
  const said = warningsOf(planned({ ...open, fwd: 'travel-down: 0 mm' }), 'metric').join()
  expect(said).toMatch(/What would work: 1\.\d\d mm of travel down at fwd-port and fwd-stbd\./)
  const shut = { gaps: 'top 1.95 mm, starboard 1.80 mm, bottom 1.65 mm, port 1.80 mm' }
  expect(warningsOf(planned({ ...shut, fwd: 'travel-up: 0 mm' }), 'metric').join()).toContain(
    'mm of travel up at fwd-port',
  )
})
