// An as-built job states how long the cable of each phase is, whoever the cable is taken from.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const lengths = 'phase-lengths: U 1.8 m, V 1.8 m, W 1.8 m'
const found = (cable: string, more = '', status = 'as-built') =>
  findingsOf(
    `job "x" { vessel: "y"  status: ${status} }
battery house { nominal: 96 V }
drive port {
  motor propulsion { power: 15 kW }
  controller { input: 72..120 V }
  ${cable}
}
${more}`,
    allChecks,
  ).findings.filter(({ check }) => check === 'cable/phase-lengths-missing')

const phases = (more = '') => `cable phases { from: controller  to: propulsion  length: 1.8 m  ${more} }`

describe('the lengths of the phases', () => {
  it.each([
    ['are asked for', phases(), 1],
    ['are stated', phases(lengths), 0],
    ['are a blank, which is asked for already', phases('phase-lengths: ?'), 0],
    [
      'are asked for where the cable says that it is one of three phases',
      'cable c { system: three-phase }',
      1,
    ],
    ['are of no cable from a battery', 'cable feed { from: house  to: controller }', 0],
  ])('%s', (_, cable, count) => {
    expect(found(cable)).toHaveLength(count)
  })

  it('are not asked for before, nor in a library', () => {
    expect(found(phases(), '', 'issued')).toEqual([])
    const { findings } = findingsOf('cable phases { system: three-phase }', allChecks)
    expect(findings.filter(({ check }) => check === 'cable/phase-lengths-missing')).toEqual([])
  })

  it('of a twin are its own', () => {
    expect(found(phases(lengths), 'drive starboard { like: port }')).toHaveLength(1)
    expect(found(phases(lengths), `drive starboard { like: port  cable phases { ${lengths} } }`)).toEqual([])
  })
})
