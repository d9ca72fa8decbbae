import { at, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { madeFor } from '../../plans/conductor-sizes.ts'
import { shortCircuitHeat } from '../../plans/short-circuit-heat.ts'

const job = (
  area: string,
) => `battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm }
drive main {
  load winch { power: 2 kW }
  cable to-winch {
    from: house
    to: winch
    conductor: ${area}
    length: 2 m
    insulation: 105 degC
  }
  protection winch-fuse { kind: fuse  rating: 100 A  in: to-winch  at: 0 mm  clears: 400 A 100 s, 2 kA 2 s, 8 kA 0.02 s }
}`

/** The section that bears so much heat as I²t (A²s), m². */
const sectionFor = (heat: number, k: number): number => Math.sqrt(heat) / k

export default check({
  id: 'cable/short-circuit-heat',
  severity: 'error',
  title: 'Conductor that a short circuit overheats before the fuse opens',
  why: 'Until the fuse has opened all heat stays in the copper. Above what it withstands the insulation melts, and the next short circuit starts there.',
  source: published(
    'IEC 60364-4-43, 434.5.2: I²t at most k²S² for short circuits of up to 5 s; k as if the insulation or a soldered joint bore 160 °C, IEC 60364-5-54',
  ),
  on: 'cable',
  needs: { conductor: 'cable.conductor' },
  fires: job('6 mm2').replace('6 mm2', '6 mm2\n#              ^^^^^ withstands'),
  quiet: job('50 mm2'),
  run: ({ conductor }, lookup) => {
    const found = shortCircuitHeat(lookup.block, lookup)
    if (!found || reaches(found.bears, found.heat)) return []
    const parallel = conductor.value > 0 ? Math.sqrt(found.bears) / (found.k * conductor.value) : 1
    const section = sectionFor(found.heat, found.k) / parallel
    const needed = madeFor(section, conductor.value)?.shown ?? formatSi(section, 'area', lookup.system, 2)
    return [
      at(conductor, {
        message: `In a short circuit the fuse lets through more than this conductor withstands: it needs ${needed}.`,
        detail: `The constant of the copper is that of IEC 60364-5-54 up to 160 °C. The curve of the fuse counts with 10 % of tolerance in the current, between the smallest and the highest short circuit.`,
        todo: 'Use a thicker conductor or a fuse that opens faster. Or check the curve of the fuse.',
        found: formatSi(conductor.value, 'area', lookup.system),
        limit: `at least ${needed}`,
        assumptions: ['insulation and joints bear 160 °C: the job does not state more'],
      }),
    ]
  },
})
