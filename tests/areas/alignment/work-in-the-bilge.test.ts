// What a fitter would be hurt by, or misled, if the plan left it out: common practice, no source. Heights are by similar triangles.
import { describe, expect, it } from 'vitest'
import { correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { planJson } from '../../../server/src/areas/alignment/plans/plan-json.ts'
import { planText } from '../../../server/src/areas/alignment/plans/plan-text.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { blockIn } from '../job-text.ts'
import { saidOf } from '../said-of.ts'

const level = 'top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm'
const centred = 'top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm'
const four = ['aft', 'fwd'].flatMap((end) =>
  (['port', 'starboard'] as const).map(
    (side) =>
      `foot ${end}-${side} { from-coupling: ${end === 'aft' ? 180 : 560} mm  across: 140 mm ${side} ROOM }`,
  ),
)

const job = ({
  gaps = level,
  offsets = `offsets: ${centred}`,
  bed = 'adjuster: stud-and-nuts\n    thread: M16',
  room = '',
  feet = four,
  more = '',
  coupling = '',
} = {}) => `drive main {
  coupling { kind: flexible  flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm  ${coupling} }
  bed {
    ${bed}
${feet.map((foot) => `    ${foot.replace('ROOM', room)}`).join('\n')}
  }
  reading a {
    taken: 2026-03-04
    gauge: 0.02 mm
    ${more}
    gaps: ${gaps}
    ${offsets}
  }
}
`
function planned(text: string): string {
  const { block, lookup } = blockIn(text, 'main.a')
  const outcome = correctionOf(block, lookup)
  return outcome.ok ? planText(outcome.value, [], 'metric') : outcome.fault.words
}
const jsonOf = (text: string) => {
  const { block, lookup } = blockIn(text, 'main.a')
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return planJson(outcome.value)
}
const high = (by: number) => `offsets: top ${by} mm, starboard 0 mm, bottom ${-by} mm, port 0 mm`
const aside = (by: number) => `offsets: top 0 mm, starboard ${by} mm, bottom 0 mm, port ${-by} mm`

describe('rough alignment', () => {
  it('lowers onto the nuts, lifts before they follow, and slides on the feet', () => {
    const down = planned(job({ offsets: high(12) }))
    expect(down).toContain('To go down, take the weight, back the lower nuts off')
    expect(down).not.toContain('run the lower nuts up')
    const up = planned(job({ offsets: high(-12) }))
    expect(up).toContain('To go up, lift a little and run the lower nuts up after it')
    expect(up).not.toContain('back the lower nuts off')
    const across = planned(job({ offsets: aside(8) }))
    expect(across).toContain('To go sideways, slide it on its feet')
    expect(across).not.toMatch(/going up|going down/)
    expect(planned(job({ offsets: high(12), bed: 'adjuster: shims' }))).toContain(
      'take out one piece of packing',
    )
  })

  it('is not begun where the job says that the bed has no room for it', () => {
    const text = planned(job({ offsets: high(-12), room: 'travel-up: 3 mm' }))
    expect(text).toContain('aft-port can go up 3.0 mm but needs 12.0 mm')
    expect(text).not.toMatch(/Take the weight|Slacken/)
    const feet = four.map((foot) => foot.replace('ROOM', `travel-up: ${foot.includes('aft') ? 20 : 3} mm`))
    const tight = planned(job({ offsets: high(-12), feet }))
    expect(tight).toContain('fwd-port can go up 3.0 mm but needs 12.0 mm')
    expect(tight).not.toContain('aft-port can go')
    expect(planned(job({ offsets: aside(8), room: 'hole-clearance: 1 mm' }))).toContain(
      'can go sideways 1.0 mm but needs 8.0 mm',
    )
    expect(planned(job({ offsets: high(-12), room: 'travel-up: 20 mm' }))).toContain('Take the weight')
  })
})

describe('the upper nuts', () => {
  it('follow a machine that goes down', () => {
    expect(planned(job({ offsets: high(4) }))).toContain(
      'Where feet go down, bring their upper nuts down after each pass, to the same slack as before.',
    )
    expect(planned(job({ offsets: high(-4) }))).not.toContain('Where feet go down')
  })

  it('of a left-hand thread loosen the other way', () => {
    const bed = (thread: string) => ({ bed: `adjuster: stud-and-nuts\n    thread: ${thread}` })
    expect(planned(job({ offsets: high(-2), ...bed('"M16x2 LH"') }))).toContain(
      'clockwise loosens an upper nut',
    )
    expect(planned(job({ offsets: high(-2), ...bed('M16') }))).not.toContain('loosens')
  })

  it('of a pair go in turn; of a foot by itself there is none', () => {
    const single = [
      'foot aft { from-coupling: 180 mm  across: 0 mm port }',
      'foot fwd { from-coupling: 560 mm  across: 0 mm port }',
    ]
    expect(planned(job({ offsets: high(-2) }))).toContain('alternating between the feet of a pair')
    expect(planned(job({ offsets: high(-2), feet: single }))).not.toContain('of a pair')
  })
})

describe('a foot between the ends', () => {
  const gaps = 'top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.80 mm'
  const feet = [...four, 'foot mid { from-coupling: 370 mm  across: 0 mm port }']
  it('is run up until it touches, on the line of the ends', () => {
    const { feet: moved } = jsonOf(job({ gaps, feet }))
    const by = (name: string) => moved.find((foot) => foot.name === name)?.moved_mm ?? Number.NaN
    // Midway between 180 and 560 mm.
    expect(by('mid')).toBeCloseTo((by('aft-port') + by('fwd-port')) / 2, 2)
    expect(moved.find(({ name }) => name === 'mid')?.turns?.untilItTouches).toBe(true)
    expect(planned(job({ gaps, feet }))).toMatch(/then mid up until it just touches, about [\d¼½¾]+ flats?/)
    expect(planned(job({ gaps }))).not.toContain('touches, about')
  })

  it('is written into the log by its height', () => {
    const text = job({ gaps, feet })
    expect(findingsOf(text, allChecks).findings.map(({ check }) => check)).toContain(
      'alignment/gap-variation-outside',
    )
    expect(jsonOf(text).work?.passes.at(-1)?.at(-1)?.feet).toEqual(['mid'])
  })
})

describe('what comes first', () => {
  it('is that the offset was not read, where steps take out the slope alone', () => {
    const gaps = 'top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.80 mm'
    const warnings = planned(job({ gaps, offsets: '' }))
      .split('\n')
      .filter((line) => line.startsWith('  ! '))
    expect(warnings[0]).toContain('The offset was not read')
    expect(planned(job({ gaps }))).not.toContain('The offset was not read')
  })

  it('is an error of the job, before a soft foot that may be misspelt', () => {
    const text = job({
      more: 'lifts: aft-pot 0.15 mm, aft-starboard 0.02 mm, fwd-port 0.02 mm, fwd-starboard 0.02 mm',
    })
    const lines =
      saidOf(text)
        .words.at(-1)
        ?.split('\n')
        .filter((line) => line.startsWith('  ! ')) ?? []
    expect(lines[0]).toMatch(/Fix it first: alignment\/lift-of-unknown-foot/)
  })
})

it('a machine that was read hot is read hot again', () => {
  const hot = planned(job({ offsets: high(-2), more: 'hot: yes' }))
  expect(hot).toContain('The next reading, the machine hot as for this reading, should show')
  expect(hot).toContain('at the same places, the machine hot as for this reading')
  expect(planned(job({ offsets: high(-2) }))).not.toContain('hot')
})

it('a machine within its limits is joined, and its bolts tightened', () => {
  const text = planned(job({ coupling: 'bolts: 4 x M10 class 8.8, 45 N·m' }))
  expect(text).toContain(
    'Join the coupling with its marks in line, and tighten the bolts crosswise to 45 N·m (4 x M10)',
  )
  expect(text).not.toContain('The next reading should show')
})

it('a lift as it is said never reaches the heads of the bolts', () => {
  const bed = 'adjuster: shims\n    shims: 0.05 mm, 0.1 mm, 0.2 mm, 0.5 mm, 1 mm'
  for (const by of [0.4, 0.7, 1.2, 1.9, 2.6]) {
    const { work } = jsonOf(job({ offsets: high(-by), bed, room: 'pack: 2 mm' }))
    const lift = Math.max(...(work?.packs ?? []).map(({ lift_mm }) => lift_mm))
    expect(Math.min(...(work?.slack ?? []).map(({ slack_mm }) => slack_mm))).toBeGreaterThan(lift)
    expect((lift * 2) % 1).toBeCloseTo(0, 9)
  }
})

describe('feet between the ends that come down', () => {
  const feet = [...four, 'foot mid { from-coupling: 370 mm  across: 0 mm port }']
  const gaps = 'top 1.58 mm, starboard 1.80 mm, bottom 2.02 mm, port 1.80 mm'
  it('go out of the way first, and are run up to the foot last: a nut that hangs in the air touches nothing on its way down', () => {
    const json = jsonOf(job({ gaps, offsets: high(0.9), feet }))
    const last = json.work?.passes.at(-1) ?? []
    const ofMid = last.filter((visit) => visit.feet.includes('mid')).map(({ up_mm }) => up_mm)
    expect(ofMid).toHaveLength(2)
    expect(ofMid[0]).toBeLessThan(0)
    expect(ofMid[1]).toBeGreaterThan(0)
    expect(last.at(-1)?.feet).toEqual(['mid'])
    const text = planned(job({ gaps, offsets: high(0.9), feet }))
    expect(text).toMatch(/then mid up until it just touches/)
    expect(text).not.toMatch(/down until it just touches/)
    const sum = (json.work?.passes ?? [])
      .flat()
      .reduce((all, visit) => all + (visit.feet.includes('mid') ? visit.up_mm : 0), 0)
    expect(sum).toBeCloseTo(json.feet.find(({ name }) => name === 'mid')?.moved_mm ?? 0, 3)
  })
})

describe('packs that are thinner than what has to come out', () => {
  const bed = 'adjuster: shims\n    shims: 0.05 mm, 0.1 mm, 0.2 mm, 0.5 mm'
  it('are said, and no gauge makes up for them', () => {
    const text = planned(job({ offsets: high(2), bed, room: 'pack: 1 mm' }))
    expect(text).toContain(
      'The bed is too high: aft-port, aft-starboard, fwd-port and fwd-starboard have packs of 1.00 mm, and 2.00 mm would have to come out',
    )
    expect(text).not.toContain('by gauge')
  })

  it('are room of rough alignment', () => {
    expect(planned(job({ offsets: high(9), bed, room: 'pack: 2 mm' }))).toContain(
      'aft-port can go down 2.0 mm but needs 9.0 mm',
    )
  })
})

it('rough alignment says what may differ, and from where', () => {
  const text = planned(job({ offsets: high(12) }))
  expect(text).toContain(
    'Go on until the rims differ by less than 1.0 mm everywhere, and the gap by less than that all round.',
  )
  const aimed = planned(
    job({ offsets: high(12) }).replace('  reading a', '  target { shaft-droop: 1.6 mm }\n  reading a'),
  )
  expect(aimed).toContain('measured from the target: machine flange 1.60 mm high, gap the same all round')
})
