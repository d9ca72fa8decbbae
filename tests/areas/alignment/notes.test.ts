// What a plan takes for granted of the room its steps need, what it asks to be measured, and why a foot goes another way than its own.
import { describe, expect, it } from 'vitest'
import { type Correction, correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { notesOnSteps } from '../../../server/src/areas/alignment/plans/notes.ts'
import { usualSlide } from '../../../server/src/engineering/usual-holes.ts'
import { blockIn } from '../job-text.ts'

const places = 'top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm'
const driveOf = ({
  bed = 'adjuster: stud-and-nuts\n    thread: M16',
  gaps = places,
  more = '',
  offset = 0,
  offsets = '',
} = {}) => `drive main {
  coupling { flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  bed {
    ${bed}
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port ${more} }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard ${more} }
  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: ${gaps}
    offsets: ${offsets || `top ${offset} mm, starboard 0 mm, bottom ${-offset} mm, port 0 mm`}
  }
}
`

function correct(text: string): Correction {
  const { block, lookup } = blockIn(text, 'main.dry-1')
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return outcome.value
}
const assumed = (text: string): string => correct(text).stepAssumptions.join('\n')
const notes = (text: string, system: 'metric' | 'inch' = 'metric') => notesOnSteps(correct(text), system)

describe('travel and holes that are not stated', () => {
  it('are assumptions of a plan that moves feet', () => {
    const text = assumed(driveOf())
    // 4½ flats of 2 mm a turn.
    expect(text).toContain(
      'the studs have enough thread: travel-up is not stated, and the plan needs at most 1.50 mm up',
    )
    expect(text).toMatch(
      /the holes let the feet slide: hole-clearance is not stated, and the plan needs at most 0\.\d\d mm sideways/,
    )
    expect(text).not.toContain('travel-down')
  })

  it('are no assumptions where they are stated, or no way is gone', () => {
    const stated = assumed(driveOf({ more: 'travel-up: 5 mm  hole-clearance: 1 mm' }))
    expect(stated).toContain('travel-up is not stated at aft-port and aft-stbd, and')
    const straight = 'top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm'
    expect(assumed(driveOf({ gaps: straight }))).not.toMatch(/not stated/)
  })

  it('with shims are the length of the bolts, and downward what lies there', () => {
    const bed = 'adjuster: shims\n    shims: 0.05 mm, 0.1 mm, 0.2 mm, 0.5 mm, 1 mm'
    expect(assumed(driveOf({ bed }))).toContain('the bolts are long enough: travel-up is not stated')
    const gaps = 'top 1.66 mm, starboard 1.80 mm, bottom 1.92 mm, port 1.78 mm'
    expect(assumed(driveOf({ bed, gaps }))).not.toMatch(/travel-/)
  })

  it('have to be measured where a step needs more than is usual', () => {
    expect(notes(driveOf())).toEqual([])
    // 0.46 mm over 110 mm is 4.18 mrad, at 560 mm and 1.9 mm high together more than 4 mm, two pitches of an M16.
    const far = notes(
      driveOf({
        gaps: 'top 2.30 mm, starboard 1.80 mm, bottom 1.84 mm, port 2.34 mm',
        offsets: 'top -1.9 mm, starboard 0 mm, bottom 1.9 mm, port 0 mm',
      }),
    )
    expect(far[0]).toMatch(
      /^fwd-port and fwd-stbd go up by 4\.\d\d mm at most\. That is more than usually stands out of a stud \(two pitches, 4\.00 mm\)\. Measure first, and state travel-up of fwd-port and fwd-stbd\.$/,
    )
    // ISO 273 medium series, from memory: 17.5 mm for an M16, so 0.75 mm to either side.
    expect(far[1]).toMatch(
      /more than the usual hole for the stud allows \(0\.75 mm to either side\)\. Measure first, and state hole-clearance of /,
    )
    expect(
      notes(
        driveOf({
          gaps: 'top 2.30 mm, starboard 1.80 mm, bottom 1.84 mm, port 1.80 mm',
          offsets: 'top -1.9 mm, starboard 0 mm, bottom 1.9 mm, port 0 mm',
          more: 'travel-up: 9 mm',
        }),
      ),
    ).toEqual([])
  })
})

it.each([
  // ISO 273 medium series: M10 11, M12 13.5, M16 17.5, M20 22, M24 26 mm (from memory).
  [0.01, 0.5e-3],
  [0.012, 0.75e-3],
  [0.016, 0.75e-3],
  [0.02, 1e-3],
  [0.024, 1e-3],
  // Inch: 1/32 in on the diameter, from 1/2 in on 1/16 in (from memory).
  [(3 / 8) * 0.0254, 0.0254 / 64],
  [0.0127, 0.0254 / 32],
  [(5 / 8) * 0.0254, 0.0254 / 32],
])('a usual hole for a stud of %s m leaves %s m to either side', (diameter, slide) => {
  expect(usualSlide(diameter)).toBeCloseTo(slide, 9)
})

describe('a foot that goes another way than by itself', () => {
  it('is said with the reason', () => {
    // The forward feet would go 0.58 mm down by themselves, but the aft ones can go up by whole flats only as far as their studs let them.
    const c = correct(`drive main {
coupling {
kind: rigid
pilot: no
flange-diameter: 97.0 mm
gauge-diameter: 84.0 mm
gap-variation: max 0.19 mm [maker]
offset: max 0.09 mm [maker]
}
bed {
adjuster: stud-and-nuts
thread: "M16x1.5 LH"
nut-step: whole-flat
foot f0p { from-coupling: 151.000 mm  across: 115.000 mm port  travel-up: 5.72 mm  travel-down: 1.23 mm  growth: 0.1100 mm }
foot f1s { from-coupling: 151.000 mm  across: 115.000 mm starboard  travel-up: 3.73 mm  travel-down: 4.16 mm  growth: 0.2000 mm }
foot f2p { from-coupling: 433.000 mm  across: 115.000 mm port  travel-up: 4.66 mm  travel-down: 3.30 mm  growth: -0.0100 mm }
foot f3s { from-coupling: 433.000 mm  across: 115.000 mm starboard  travel-up: 1.26 mm  travel-down: 1.87 mm  growth: -0.0900 mm }
foot f4p { from-coupling: 621.000 mm  across: 115.000 mm port  travel-up: 2.85 mm  travel-down: 3.94 mm  growth: 0.1600 mm }
foot f5s { from-coupling: 621.000 mm  across: 115.000 mm starboard  travel-up: 1.40 mm  travel-down: 0.59 mm  growth: 0.0500 mm }
}
target {
shaft-droop: 0.19 mm
shaft-slope: 0.48 mrad
afloat-up: -0.05 mm
afloat-to-starboard: -0.18 mm
afloat-slope-up: -0.09 mrad
afloat-slope-to-starboard: 0.08 mrad
maker-up: 0.0 mm
maker-to-starboard: -0.11 mm
maker-slope-up: -0.23 mrad
maker-slope-to-starboard: -0.39 mrad
}
reading dry-1 {
taken: 2026-03-04
gauge: 0.01 mm
hot: yes
gaps: top 5.4200 mm, starboard 5.8000 mm, bottom 5.7800 mm, port 5.4000 mm
offsets: top -1.1400 mm, starboard -1.0300 mm, bottom 2.1300 mm, port 2.0200 mm
}
}`)
    expect(
      c.feet.slice(4).map(({ vertical, moved }) => [Math.sign(vertical.value), Math.sign(moved)]),
    ).toEqual([
      [-1, 1],
      [-1, 1],
    ])
    expect(notesOnSteps(c, 'metric').at(-1)).toBe(
      'f4p and f5s go up, although by themselves they would go down: with the travel and steps of the feet, this is best for the machine as a whole.',
    )
  })

  it('or stays, is said too, but not where it is as near as a flat', () => {
    // Aft is wanted 0.51 mm up, more than a flat of 2 mm a turn, but has 0.1 mm of travel.
    const text = driveOf({
      gaps: 'top 1.68 mm, starboard 1.80 mm, bottom 1.92 mm, port 1.80 mm',
      offset: -0.9,
    })
    const limited = text.replaceAll('180 mm', '180 mm  travel-up: 0.1 mm')
    expect(notes(limited)).toEqual([
      'aft-port and aft-stbd stay, although by themselves they would go up: with the travel and steps of the feet, this is best for the machine as a whole.',
    ])
    expect(notes(text)).toEqual([])
  })

  it('is not put down to a machine inside its limits where the next reading could not prove it', () => {
    const text = driveOf({
      gaps: 'top 1.84 mm, starboard 1.80 mm, bottom 1.76 mm, port 1.80 mm',
      offset: -0.1,
    })
      .replaceAll('180 mm', '180 mm  travel-up: 0.1 mm  travel-down: 0.1 mm')
      .replace('gauge: 0.02 mm', 'gauge: 0.05 mm')
    const { predicted } = correct(text)
    expect([predicted?.inside, predicted?.provable]).toEqual([true, false])
    expect(notes(text)).toEqual([
      'fwd-port and fwd-stbd stay, although by themselves they would go up: with the travel and steps of the feet, this is best for the machine as a whole.',
    ])
  })
})
