import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Correction, correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { planJson } from '../../../server/src/areas/alignment/plans/plan-json.ts'
import { correctionText } from '../../../server/src/areas/alignment/plans/words.ts'
import { blockIn } from '../job-text.ts'

const feet = `foot aft-port { from-coupling: 200 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 200 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 600 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 600 mm  across: 140 mm starboard }`

interface Job {
  readonly coupling?: string
  readonly feet?: string
  readonly reading: string
  readonly more?: string
}

const jobOf = (j: Job): string => `drive main {
  coupling { ${j.coupling ?? 'flange-diameter: 100 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm'} }
  bed {
    adjuster: shims
    ${j.feet ?? feet}
  }
  ${j.more ?? ''}
  reading dry-1 {
    taken: 2026-03-04
    ${j.reading}
  }
}`

function outcome(j: Job) {
  const { block, lookup } = blockIn(jobOf(j), 'main.dry-1')
  return correctionOf(block, lookup)
}

function correct(j: Job): Correction {
  const found = outcome(j)
  if (!found.ok) throw new Error(found.fault.words)
  return found.value
}

const inch = 0.0254
const upOf = (c: Correction, name: string): number =>
  c.feet.find((foot) => foot.name === name)?.vertical.value ?? Number.NaN
const movesOf = (c: Correction): readonly number[] =>
  c.feet.flatMap(({ vertical, horizontal }) => [vertical.value, horizontal.value])

/** A machine: offset (mm) and slope (mrad) in both planes. */
const machine = fc.record({
  oz: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
  oy: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
  tv: fc.double({ min: -3, max: 3, noNaN: true }),
  th: fc.double({ min: -3, max: 3, noNaN: true }),
})
type Machine = typeof machine extends fc.Arbitrary<infer T> ? T : never

const quarters = ['top', 'starboard', 'bottom', 'port'] as const
const around = (value: (cos: number, sin: number) => number): string =>
  quarters
    .map((place, i) => {
      const a = (i * Math.PI) / 2
      return `${place} ${value(Math.round(Math.cos(a)), Math.round(Math.sin(a))).toFixed(9)} mm`
    })
    .join(', ')

/** Gap, and step of the rims in the plane x (mm), in the words of the house: top, starboard, bottom, port. */
const gap = (m: Machine) => (cos: number, sin: number) => 2 - 0.05 * (m.tv * cos + m.th * sin)
const rim = (m: Machine, x: number) => (cos: number, sin: number) =>
  (m.oz + (m.tv * x) / 1000) * cos + (m.oy + (m.th * x) / 1000) * sin

const near = (a: readonly number[], b: readonly number[]) => {
  expect(a.length).toBe(b.length)
  for (const [i, value] of a.entries()) expect(Math.abs(value - (b[i] ?? Number.NaN))).toBeLessThan(1e-10)
}

describe('one machine read in other ways', () => {
  const straight = (m: Machine) =>
    correct({ reading: `gauge: 0.01 mm\n    gaps: ${around(gap(m))}\n    offsets: ${around(rim(m, 0))}` })

  it('by dials on face and rim, carried by either half, with a bar that hangs, asks for the same moves', () => {
    fc.assert(
      fc.property(
        machine,
        fc.constantFrom('shaft', 'machine'),
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        (m, carrier, droop) => {
          const sign = carrier === 'shaft' ? 1 : -1
          const c = correct({
            reading: `gauge: 0.01 mm
    dial-carried-by: ${carrier}
    bar-droop: ${droop.toFixed(9)} mm
    face-dial: ${around((cos, sin) => 1 - gap(m)(cos, sin))}
    rim-dial: ${around((cos, sin) => sign * rim(m, 0)(cos, sin) - droop * (1 - cos))}`,
          })
          near(movesOf(c), movesOf(straight(m)))
          expect(c.gapVariation.value.value).toBeCloseTo(straight(m).gapVariation.value.value, 9)
        },
      ),
      { numRuns: 40 },
    )
  })

  it('by reverse indicator asks for the same moves, and shows the same gap variation', () => {
    fc.assert(
      fc.property(
        machine,
        fc.integer({ min: -300, max: -20 }),
        fc.integer({ min: 0, max: 100 }),
        (m, s, a) => {
          const c = correct({
            reading: `gauge: 0.01 mm
    bar-droop: 0 mm
    dial-carried-by: shaft
    rim-dial: ${around(rim(m, a))}
    rim-dial-at: ${a} mm
    reverse-dial: ${around((cos, sin) => -rim(m, s)(cos, sin))}
    reverse-dial-at: ${s} mm`,
          })
          near(movesOf(c), movesOf(straight(m)))
          expect(c.gapVariation.value.value).toBeCloseTo(straight(m).gapVariation.value.value, 9)
          expect(c.readBy).toEqual({ face: 'reverse-dial', rim: 'rim-dial' })
        },
      ),
      { numRuns: 40 },
    )
  })

  // Bloch & Geitner, Machinery Component Maintenance and Repair, p. 203: axis 0.012 in high in plane S and 0.007 in high in plane A, 14 in apart;
  // inboard feet 26 in, outboard 52 in from plane S. Printed: lower 0.003 in, raise 0.007 in.
  it('agrees with the published reverse-indicator example', () => {
    const c = correct({
      feet: `foot inboard { from-coupling: 26 in  across: 0 in }
    foot outboard { from-coupling: 52 in  across: 0 in }`,
      reading: `gauge: 0.001 in
    bar-droop: 0 in
    dial-carried-by: shaft
    rim-dial: top 0.007 in, starboard 0 in, bottom -0.007 in, port 0 in
    rim-dial-at: 14 in
    reverse-dial: top -0.012 in, starboard 0 in, bottom 0.012 in, port 0 in
    reverse-dial-at: 0 in`,
    })
    expect(upOf(c, 'inboard') / inch).toBeCloseTo(-0.003, 3)
    expect(upOf(c, 'outboard') / inch).toBeCloseTo(0.007, 3)
  })

  // Dial-indicator course notes, sag: 0, +15, +15, +30 hundredths with a bar that reads 0, -5, -5, -10: corrected 0, 20, 20, 40, offset 0.20 mm.
  it('agrees with the published sag example', () => {
    const c = correct({
      reading: `gauge: 0.01 mm
    dial-carried-by: shaft
    bar-droop: 0.05 mm
    gaps: top 2 mm, starboard 2 mm, bottom 2 mm, port 2 mm
    rim-dial: top 0 mm, starboard 0.15 mm, bottom 0.30 mm, port 0.15 mm`,
    })
    expect(c.offset?.parts.vertical.value).toBeCloseTo(-0.2e-3, 9)
  })

  it('in two positions of the flange is free of its run-out, which is told', () => {
    fc.assert(
      fc.property(
        machine,
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        fc.double({ min: 0, max: 6, noNaN: true }),
        (m, swing, towards) => {
          const turning = (cos: number, sin: number) =>
            (swing / 2) * (cos * Math.cos(towards) + sin * Math.sin(towards))
          const pair = (of: (cos: number, sin: number) => number, sign: number) =>
            around((cos, sin) => of(cos, sin) + sign * turning(cos, sin))
          const c = correct({
            reading: `gauge: 0.01 mm
    gaps: ${pair(gap(m), 1)}
    gaps-half-turn: ${pair(gap(m), -1)}
    offsets: ${pair(rim(m, 0), 1)}
    offsets-half-turn: ${pair(rim(m, 0), -1)}`,
          })
          near(movesOf(c), movesOf(straight(m)))
          expect(c.runOut?.face?.value).toBeCloseTo(swing / 1000, 9)
          expect(c.runOut?.rim?.value).toBeCloseTo(swing / 1000, 9)
          expect(correctionText(c, 'metric')).toContain('run-out')
        },
      ),
      { numRuns: 40 },
    )
  })

  it('weighs the rims by their own gauge', () => {
    const read = (gauges: string) =>
      correct({ reading: `${gauges}\n    gaps: ${around(() => 2)}\n    offsets: ${around(() => 0)}` })
    const [same, finer] = [read('gauge: 0.05 mm'), read('gauge: 0.05 mm\n    offset-gauge: 0.01 mm')]
    expect(finer.offset?.parts.vertical.standard).toBeCloseTo(
      (same.offset?.parts.vertical.standard ?? Number.NaN) / 5,
      12,
    )
    expect(finer.gapVariation.value).toEqual(same.gapVariation.value)
  })

  it.each([
    ['faces', `gaps: ${around(() => 2)}\n    face-dial: ${around(() => 0)}`],
    ['rims', `gaps: ${around(() => 2)}\n    offsets: ${around(() => 0)}\n    rim-dial: ${around(() => 0)}`],
  ])('cannot be told where the %s are read twice', (_, read) => {
    const found = outcome({ reading: `gauge: 0.01 mm\n    ${read}` })
    expect(found).toMatchObject({ ok: false, fault: { type: 'read-twice' } })
  })
})

describe('soft feet (limit 0.06 mm: general industry alignment tolerance table)', () => {
  const level = `gauge: 0.01 mm\n    gaps: top 2.2 mm, starboard 2 mm, bottom 1.8 mm, port 2 mm\n    offsets: ${around(() => 0)}`

  // US Bureau of Reclamation, FIST 4-1A: one foot rises 0.005 in, the others 0.002 in: shim 0.003 in.
  it('withhold the steps, and are raised by what they rise more than the others', () => {
    const c = correct({
      reading: `${level}\n    lifts: aft-port 0.005 in, aft-stbd 0.002 in, fwd-port 0.002 in, fwd-stbd 0.002 in`,
    })
    expect(c.withheld).toBe('soft-foot')
    expect(c.predicted).toBeUndefined()
    expect(c.soft?.soft).toEqual(['aft-port'])
    expect(
      ((typeof c.soft?.missing === 'object' ? c.soft.missing.height : undefined) ?? Number.NaN) / inch,
    ).toBeCloseTo(0.003, 6)
    expect(planJson(c).softFeet).toMatchObject({ feet: ['aft-port'], missing: { foot: 'aft-port' } })
    expect(correctionText(c, 'metric')).toContain('do not trust this reading')
  })
  it('are none where every foot stays below the limit', () => {
    const c = correct({
      reading: `${level}\n    lifts: aft-port 0.05 mm, aft-stbd 0.02 mm, fwd-port 0.02 mm, fwd-stbd 0.02 mm`,
    })
    expect(c.withheld).toBeUndefined()
    expect(c.soft).toBeUndefined()
  })
})

describe('the target', () => {
  const read = (m: Machine) =>
    `gauge: 0.01 mm\n    gaps: ${around(gap(m))}\n    offsets: ${around(rim(m, 0))}`
  const still = { oz: 0, oy: 0, tv: 0, th: 0 }

  it('of a parted shaft end that hangs: the machine is to stand high by the droop, its far end high by the slope', () => {
    const c = correct({
      more: 'target { shaft-droop: 0.08 mm  shaft-slope: 0.3 mrad }',
      reading: read({ ...still, oz: 0.08, tv: 0.3 }),
    })
    expect(c.verdict).toBe('within')
    expect(c.gapVariation.value.value).toBeCloseTo(0, 9)
    near(movesOf(c), Array(8).fill(0))
    expect(c.assumptions.join()).not.toContain('straight line')
    expect(planJson(c).target).toMatchObject({
      offset_mm: { vertical: 0.08 },
      slope_mrad: { vertical: 0.3 },
      parts: [{ offset_mm: { vertical: 0.08 } }],
    })
    expect(correctionText(c, 'metric')).toContain('machine flange 0.08 mm high, far end 0.30 mrad high')
    // What the gauge itself will show again is not the error, but the target with it.
    expect(c.predicted?.offset?.vertical.value).toBeCloseTo(0.08e-3, 9)
  })

  it('is reached by the moves from anywhere (growth, movement afloat, maker, shaft end together)', () => {
    fc.assert(
      fc.property(machine, (m) => {
        const grown = feet
          .replaceAll(/aft-(port|stbd) \{/g, '$& growth: 0.10 mm ')
          .replaceAll(/fwd-(port|stbd) \{/g, '$& growth: 0.30 mm ')
        const c = correct({
          feet: grown,
          more: 'target { shaft-droop: 0.08 mm  shaft-slope: 0.3 mrad  afloat-up: -0.10 mm  afloat-slope-to-starboard: 0.2 mrad  maker-to-starboard: 0.05 mm }',
          reading: `afloat: no\n    hot: no\n    ${read(m)}`,
        })
        // By hand: growth 0.10 mm at 200 and 0.30 mm at 600 is a rise of 0.5 mrad through 0 at the coupling.
        const aim = { oz: 0.08 + 0.1, oy: 0.05, tv: 0.3 - 0.5, th: -0.2 }
        for (const foot of c.feet) {
          expect(foot.vertical.value * 1000).toBeCloseTo(aim.oz - m.oz + (aim.tv - m.tv) * foot.x, 6)
          expect(foot.horizontal.value * 1000).toBeCloseTo(aim.oy - m.oy + (aim.th - m.th) * foot.x, 6)
        }
        expect(c.target?.parts).toHaveLength(4)
      }),
      { numRuns: 30 },
    )
  })

  it('leaves out what has happened already: movement afloat for a boat afloat, growth for a hot machine', () => {
    const c = correct({
      feet: feet.replaceAll(/(port|stbd) \{/g, '$& growth: 0.10 mm '),
      more: 'target { afloat-up: -0.10 mm }',
      reading: `afloat: yes\n    hot: yes\n    ${read(still)}`,
    })
    expect(c.target).toBeUndefined()
    near(movesOf(c), Array(8).fill(0))
  })

  it('says what of it the job leaves open, and what cannot count any more is not open', () => {
    const assumed = (reading: string, more = '', growth = '') =>
      correct({
        feet: feet.replaceAll(/(port|stbd) \{/g, `$& ${growth}`),
        more: `target { ${more} }`,
        reading: `${reading}\n    ${read(still)}`,
      }).assumptions.filter((line) => line.startsWith('the target'))
    expect(assumed('', 'maker-up: 0.10 mm')).toEqual([
      'the target has no allowance for droop of the parted shaft end, heat growth or movement afloat: none is stated',
    ])
    expect(assumed('afloat: yes', 'shaft-droop: 0.08 mm')).toEqual([
      'the target has no allowance for heat growth: none is stated',
    ])
    const all = 'shaft-droop: 0.08 mm  afloat-up: -0.10 mm'
    expect(assumed('afloat: no', all, 'growth: 0.10 mm')).toEqual([])
    expect(assumed('afloat: yes\n    hot: yes', 'shaft-droop: 0.08 mm')).toEqual([])
  })

  it('that is none says so', () => {
    expect(correct({ reading: read(still) }).assumptions.join()).toContain('straight line through the shaft')
  })
})

describe('what is allowed where the file is silent', () => {
  const reading = `gauge: 0.005 mm\n    gaps: ${around(() => 2)}\n    offsets: ${around(() => 0)}`
  const at = (coupling: string, more = '') =>
    correct({ coupling: `${coupling}  flange-diameter: 100 mm`, reading, more })

  // General industry alignment tolerance table (public): 1500 rpm 0.09 mm offset, 0.07 mm on 100 mm; 750 rpm 0.19 and 0.13.
  it('goes for a flexible coupling by speed where that is stricter, behind a gear by the speed of the shaft', () => {
    const fast = at('kind: flexible', 'motor { power: 15 kW  speed: 1500 rpm }')
    expect(fast.gapVariation.limit).toBeCloseTo(0.07e-3, 9)
    expect(fast.offset?.limit).toBeCloseTo(0.09e-3, 9)
    const geared = at('kind: flexible', 'motor { power: 15 kW  speed: 1500 rpm }\n  gear { ratio: 2 }')
    // 0.001 of the diameter is stricter than 0.13 mm on 100 mm.
    expect(geared.gapVariation.limit).toBeCloseTo(0.1e-3, 9)
    expect(geared.offset?.limit).toBeCloseTo(0.19e-3, 9)
    expect(fast.assumptions.join()).toContain('general industry table')
  })
  // Public boat-class alignment guides: 0.001 in per inch of flange diameter.
  it('goes for a rigid coupling by the diameter of the flange, whatever the speed', () => {
    const rigid = at('kind: rigid', 'motor { power: 15 kW  speed: 3000 rpm }')
    expect(rigid.gapVariation.limit).toBeCloseTo(0.1e-3, 9)
    expect(rigid.offset?.limit).toBeCloseTo(0.1e-3, 9)
  })
  it('yields to the maker', () => {
    const c = at(
      'kind: flexible  gap-variation: max 0.2 mm [maker]  offset: max 0.3 mm [maker]',
      'motor { power: 15 kW  speed: 3000 rpm }',
    )
    expect([c.gapVariation.limit, c.offset?.limit]).toEqual(
      [0.2e-3, 0.3e-3].map((v) => expect.closeTo(v, 12)),
    )
    expect(c.gapVariation.limitFrom).toBe('the maker')
  })
})

describe('symmetries, with dials, turned flanges and a target', () => {
  const job = (m: Machine, side: 1 | -1, unit: 'mm' | 'in', scale: number) => {
    const to = (mm: number) => `${((mm * scale) / (unit === 'in' ? 25.4 : 1)).toFixed(12)} ${unit}`
    const read = (value: (cos: number, sin: number) => number) =>
      around(value).replaceAll(/(-?[\d.]+) mm/g, (_, mm: string) => to(Number(mm)))
    const it = { ...m, oy: side * m.oy, th: side * m.th }
    const foot = (name: string, x: number, way: number) =>
      `foot ${name} { from-coupling: ${to(x)}  across: ${to(140)} ${way * side < 0 ? 'port' : 'starboard'} }`
    return correct({
      coupling: `flange-diameter: ${to(100)}  gap-variation: max ${to(0.1)}  offset: max ${to(0.15)}`,
      feet: [foot('a', 200, -1), foot('b', 200, 1), foot('c', 600, -1), foot('d', 600, 1)].join('\n    '),
      more: `target { shaft-droop: ${to(0.08)}  shaft-slope: 0.3 mrad  maker-to-starboard: ${to(0.05 * side)}  maker-slope-to-starboard: ${0.2 * side} mrad }`,
      reading: `gauge: ${to(0.01)}
    dial-carried-by: machine
    bar-droop: ${to(0.04)}
    gaps: ${read((cos, sin) => gap(it)(cos, sin) + 0.03 * cos)}
    gaps-half-turn: ${read((cos, sin) => gap(it)(cos, sin) - 0.03 * cos)}
    rim-dial: ${read((cos, sin) => -rim(it, 20)(cos, sin) - 0.04 * (1 - cos))}
    rim-dial-at: ${to(20)}`,
    })
  }
  it('mirror: port for starboard changes the sign of the sideways moves alone', () => {
    fc.assert(
      fc.property(machine, (m) => {
        const [one, other] = [job(m, 1, 'mm', 1), job(m, -1, 'mm', 1)]
        near(
          movesOf(other),
          movesOf(one).map((v, i) => (i % 2 === 0 ? v : -v)),
        )
        expect(other.verdict).toBe(one.verdict)
      }),
      { numRuns: 20 },
    )
  })
  it('inch for metric changes nothing; a machine k times as large moves k times as far', () => {
    fc.assert(
      fc.property(machine, fc.constantFrom(0.5, 2), (m, k) => {
        const one = job(m, 1, 'mm', 1)
        near(movesOf(job(m, 1, 'in', 1)), movesOf(one))
        near(
          movesOf(job(m, 1, 'mm', k)),
          movesOf(one).map((v) => k * v),
        )
      }),
      { numRuns: 20 },
    )
  })
})
