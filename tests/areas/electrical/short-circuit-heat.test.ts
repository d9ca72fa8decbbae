// Short circuits against the curve of the fuse: IEC 60364-4-43, 434.5.2 (I²t ≤ k²S²); sections of a public short-circuit sizing page; 1.6 : 1 of a fuse
// maker's guide.
import { describe, expect, it } from 'vitest'
import { shortCircuitHeat } from '../../../server/src/areas/electrical/plans/short-circuit-heat.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { blockIn } from '../job-text.ts'

const job = ({
  area = 50,
  curve = 'clears: 400 A 4 s, 8 kA 0.2 s',
  ohm = '14 mohm',
  length = 2,
  insulation = 90,
} = {}) => `battery b { nominal: 96 V  window: 84..108 V  internal-resistance: ${ohm} }
load l { power: 2 kW }
cable f { from: b  to: l  conductor: ${area} mm2  length: ${length} m  insulation: ${insulation} degC }
protection p { kind: fuse  rating: 100 A  in: f  at: 0 mm  ${curve} }
`
const heatOf = (text: string) => {
  const { block, lookup } = blockIn(text, 'f')
  return shortCircuitHeat(block, lookup)
}
const found = (text: string, check: string) =>
  findingsOf(text, allChecks).findings.flatMap((one) => (one.check === check ? [one.message] : []))

describe('the heat of a short circuit', () => {
  // k of PVC 90 → 160 °C: 100 A·√s/mm² (BS 7671 / IEC 60364-5-54 as cited by a public cable-engineering page).
  it('is borne as k²S²', () => {
    expect(heatOf(job())?.k).toBeCloseTo(99.88e6, -4)
    expect(Math.sqrt(heatOf(job())?.bears ?? 0)).toBeCloseTo(99.88 * 50, 0)
  })

  it('is that of the worst current between the smallest and the highest: I²t of the curve, later by its tolerance', () => {
    // One point alone: 8 kA at most, 0.2 s. Beyond the last point no later.
    const flat = heatOf(job({ curve: 'clears: 400 A 0.2 s, 7 kA 0.2 s' }))
    const highest = 108 / 0.014
    expect(flat?.heat).toBeCloseTo(highest ** 2 * 0.2, -3)
  })

  it('asks for a section that bears it, and for none where it does', () => {
    const needed = Math.sqrt((108 / 0.014) ** 2 * 0.2) / 99.88
    const curve = 'clears: 400 A 0.2 s, 7 kA 0.2 s'
    expect(found(job({ area: Math.ceil(needed), curve }), 'cable/short-circuit-heat')).toEqual([])
    expect(found(job({ area: Math.floor(needed), curve }), 'cable/short-circuit-heat')).toHaveLength(1)
  })

  it('is not known without the curve, and judged by no other', () => {
    expect(heatOf(job({ curve: '' }))).toBeUndefined()
    expect(found(job({ area: 1, curve: '' }), 'cable/short-circuit-heat')).toEqual([])
  })

  it('grows with a second battery, and is less in conductors in parallel', () => {
    const two = `${job()}battery s { nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm }\ncable k { from: s  to: l  conductor: 50 mm2  length: 2 m  insulation: 90 degC }\nprotection q { kind: fuse  rating: 100 A  in: k  at: 0 mm  clears: 400 A 4 s, 8 kA 0.2 s }\n`
    expect(heatOf(two)?.heat).toBeGreaterThan(heatOf(job())?.heat ?? Number.NaN)
    const parallel = job().replace('50 mm2', '50 mm2  parallel: 2')
    expect(heatOf(parallel)?.bears).toBeCloseTo(4 * (heatOf(job())?.bears ?? Number.NaN), 0)
    // A fuse of which the curve is not known may let through anything.
    expect(heatOf(two.replace(/clears: 400 A 4 s, 8 kA 0.2 s \}\n$/, '}\n'))).toBeUndefined()
  })
})

describe('the smallest short circuit', () => {
  it('that lasts above 5 s is late, and one below the curve may never end', () => {
    const weak = { ohm: '100 mohm' } // 84 V over 0.1 Ω: 840 A less the cable.
    expect(found(job({ ...weak, curve: 'clears: 400 A 4 s, 8 kA 0.2 s' }), 'protection/clears-late')).toEqual(
      [],
    )
    expect(
      found(job({ ...weak, curve: 'clears: 400 A 100 s, 8 kA 0.2 s' }), 'protection/clears-late')[0],
    ).toContain('may last')
    expect(
      found(job({ ...weak, curve: 'clears: 1000 A 1 s, 8 kA 0.2 s' }), 'protection/clears-late')[0],
    ).toContain('does not show')
  })
})

describe('two fuses in a row', () => {
  const row = (
    far: string,
    near: string,
    more = '',
  ) => `battery b { nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm }
busbar bus { current: 600 A }
cable lead { from: b  to: bus  conductor: 95 mm2  length: 1 m  insulation: 90 degC }
protection main { kind: fuse  ${far}  in: lead  at: 0 mm }
load l { power: 2 kW }
cable f { from: bus  to: l  conductor: 50 mm2  length: 2 m  insulation: 90 degC }
protection p { kind: fuse  ${near}  in: f  at: 0 mm  ${more} }
`
  const said = (text: string) => found(text, 'protection/not-selective')
  const gG = (rating: number) => `fuse-class: gG  rating: ${rating} A`

  it('of one class are not selective where the nearer one is no smaller', () => {
    expect(said(row(gG(100), gG(100)))).toHaveLength(1)
    expect(said(row(gG(100), gG(160)))).toHaveLength(1)
    expect(said(row(gG(160), gG(100)))).toEqual([])
  })

  it('follow their curves where both are stated', () => {
    const fast = 'clears: 200 A 1 s, 2 kA 0.001 s'
    const slow = 'clears: 600 A 2 s, 6 kA 0.5 s'
    expect(said(row(`rating: 160 A  ${fast}`, `rating: 100 A  ${slow}`))[0]).toContain('main opens before')
    expect(said(row(`rating: 160 A  ${slow}`, `rating: 100 A  ${fast}`))).toEqual([])
  })

  it('that a table of the maker shows are not doubted', () => {
    expect(said(row(gG(100), gG(100), 'selective-with: main'))).toEqual([])
  })

  it('are said of the nearer one alone, also where two batteries feed the busbar', () => {
    const two = `${row(gG(100), gG(100))}battery s { nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm }
cable lead-s { from: s  to: bus  conductor: 95 mm2  length: 1 m  insulation: 90 degC }
protection main-s { kind: fuse  ${gG(100)}  in: lead-s  at: 0 mm }
`
    expect(
      findingsOf(two, allChecks).findings.filter(({ check }) => check === 'protection/not-selective'),
    ).toHaveLength(2)
  })
})
