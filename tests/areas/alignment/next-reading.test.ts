// What the gauges should show after the steps, and where they should stand. Geometry: the end of a parted shaft that hangs by its droop is lifted when
// the coupling is joined, so the machine is read high by the droop and the gap wider at the bottom by slope x diameter (US Army TM 55-1905-222-14).
import { describe, expect, it } from 'vitest'
import { type Correction, correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { formatAllowed } from '../../../server/src/areas/alignment/plans/next-reading-words.ts'
import { planJson } from '../../../server/src/areas/alignment/plans/plan-json.ts'
import { correctionMarkdown, correctionText } from '../../../server/src/areas/alignment/plans/words.ts'
import { blockIn } from '../job-text.ts'

const level = 'top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm'
const job = ({
  target = '',
  gaps = level,
  gauge = '0.02 mm',
  system = 'metric',
} = {}) => `job "a" { show-in: ${system} }
drive main {
  coupling { kind: flexible  pilot: no  flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
  ${target}
  reading a {
    taken: 2026-03-04
    gauge: ${gauge}
    gaps: ${gaps}
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}
`
function planned(text: string): Correction {
  const { block, lookup } = blockIn(text, 'main.a')
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return outcome.value
}

describe('with a target', () => {
  const c = planned(job({ target: 'target { shaft-droop: 0.20 mm  shaft-slope: 0.8 mrad }' }))

  it('the next reading is said as the gauges show it, with what is wanted there and how far from it', () => {
    // One flat of M16 aft and two forward: slope 0.333/380, so 0.333 - 180 x 0.333/380 = 0.175 mm high and 110 x 0.877 mrad = 0.096 mm wider at
    // the bottom; wanted are 0.20 mm and 110 x 0.8 mrad = 0.088 mm.
    for (const words of [correctionText(c, 'metric'), correctionMarkdown(c, 'metric')]) {
      expect(words).toContain('the machine flange 0.18 ± 0.01 mm high')
      expect(words).toContain('(target: 0.20 mm high, at most 0.15 mm from there)')
      expect(words).toContain('the gap 0.10 ± 0.02 mm wider at the bottom than at the top')
      expect(words).toContain(
        '(target: 0.09 mm wider at the bottom than at the top, at most 0.10 mm from that)',
      )
      expect(words).not.toMatch(/offset at most|gap variation at most/)
    }
    expect(formatAllowed(c, 'metric')).toBe(
      'machine flange 0.20 mm high, at most 0.15 mm from there; gap 0.09 mm wider at the bottom than at the top, at most 0.10 mm from that',
    )
  })

  it('JSON has how the gap opens and what is left to the target', () => {
    expect(planJson(c).predicted).toMatchObject({
      opening_mm: { vertical: { value: expect.closeTo(-0.0965, 3) } },
      fromTarget_mm: { gapVariation: expect.closeTo(0.0085, 3), offset: expect.closeTo(0.0246, 3) },
    })
  })
})

it('a slope that is wanted to starboard opens the gap at port', () => {
  // 110 mm x 0.8 mrad = 0.088 mm; the forward end to starboard brings the starboard side of the flanges together (geometry).
  expect(
    formatAllowed(planned(job({ target: 'target { maker-slope-to-starboard: 0.8 mrad }' })), 'metric'),
  ).toContain('gap 0.09 mm wider at port than at starboard, at most 0.10 mm from that')
})

it('says that a finer gauge is needed only where the next reading could not prove the machine inside', () => {
  const out = { gaps: 'top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm' }
  const needs = 'but too near to one for a gauge'
  const [fine, coarse] = [planned(job(out)), planned(job({ ...out, gauge: '0.05 mm' }))]
  expect([fine.predicted?.inside, fine.predicted?.provable]).toEqual([true, true])
  expect(correctionText(fine, 'metric')).not.toContain(needs)
  expect([coarse.predicted?.inside, coarse.predicted?.provable]).toEqual([true, false])
  expect(correctionText(coarse, 'metric')).toContain(
    `${needs} with steps of 0.05 mm to prove it. Take the next reading with a finer gauge`,
  )
})

it('without one what is left is what the gauges show', () => {
  const c = planned(job({ gaps: 'top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm' }))
  expect(c.predicted?.fromTarget.gapVariation).toBeCloseTo(c.predicted?.gapVariation.value ?? 0, 12)
  expect(formatAllowed(c, 'metric')).toBe('gap variation at most 0.10 mm, offset at most 0.15 mm')
  expect(correctionText(c, 'metric')).toContain('mrad down and 0.18 ± 0.15 mrad to port, going forward')
})

it('a gauge that could decide is one that is made', () => {
  // 0.09 mm of 0.10 mm, U 0.0163 mm for a step of 0.02 mm: a step of 0.0122 mm would do, and gauges are made with 0.01 mm, or with 0.0001 in.
  const near = { gaps: 'top 1.845 mm, starboard 1.80 mm, bottom 1.755 mm, port 1.80 mm' }
  expect(correctionText(planned(job(near)), 'metric')).toContain(
    'A gauge with steps of 0.01 mm or finer could decide',
  )
  expect(correctionText(planned(job({ ...near, system: 'inch' })), 'inch')).toContain(
    'A gauge with steps of 0.0001 in or finer could decide',
  )
})

it('no gauge is said to decide more than the gap variation while the rims were not read', () => {
  // 0.09 mm of 0.10 mm, as above, and nothing known of the offset.
  const near = job({ gaps: 'top 1.845 mm, starboard 1.80 mm, bottom 1.755 mm, port 1.80 mm' })
  const text = correctionText(planned(near.replace(/ +offsets:.*\n/, '')), 'metric')
  expect(text).toContain('A gauge with steps of 0.01 mm or finer could decide the gap variation.')
  expect(text).toContain('The offset was not read: these steps correct the slope only')
})

it('what withholds the steps stands before every other warning', () => {
  const twice = 'top 1.92 mm, top 1.60 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.60 mm'
  const words = correctionText(planned(job({ gaps: twice })), 'metric')
  const warnings = words.split('\n').filter((line) => line.startsWith('  ! '))
  expect(warnings[0]).toMatch(/read more than once at top differ/)
  expect(words.match(/[Rr]ead again/g)).toHaveLength(1)
})
