// Common practice, no source: a foot is called by its place, and the plan calls it by that name.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { obeysLaws } from '../../checks/laws.ts'
import { findingsOf } from '../../checks/marks.ts'

const id = 'alignment/foot-name-contradicts-place'
const check = allChecks.find((c) => c.id === id)

type Foot = readonly [name: string, x: number, across: string]
const bed = (...feet: readonly Foot[]) =>
  `drive main {\n  bed {\n    adjuster: stud-and-nuts\n${feet
    .map(([name, x, across]) => `    foot ${name} { from-coupling: ${x} mm  across: ${across} }\n`)
    .join('')}  }\n}\n`
const said = (...feet: readonly Foot[]) =>
  findingsOf(bed(...feet), check ? [check] : []).findings.map(({ message }) => message)
const offered = (...feet: readonly Foot[]) =>
  check ? obeysLaws(bed(...feet), check).map(({ fix }) => fix.title) : []

const aftPort: Foot = ['aft-port', 180, '140 mm port']
const aftStbd: Foot = ['aft-stbd', 180, '140 mm starboard']
const fwdPort: Foot = ['fwd-port', 560, '140 mm port']

describe('the side in a name', () => {
  it.each([
    ['fwd-stbd', '140 mm port', 'starboard', 'port'],
    ['stbd_fwd', '140 mm port', 'starboard', 'port'],
    ['starboard2', '140 mm port', 'starboard', 'port'],
    ['port.2', '140 mm starboard', 'port', 'starboard'],
  ])('%s at %s', (name, across, named, stands) => {
    expect(said([name, 560, across])).toEqual([`Foot ${name} is named for ${named}, but it is to ${stands}.`])
  })

  it.each([
    ['fwd-stbd', '140 mm starboard'],
    ['fwd-stbd', '0 mm'],
    ['support', '140 mm starboard'],
    ['portable-1', '140 mm starboard'],
    ['p1', '140 mm starboard'],
    ['port-to-stbd', '140 mm starboard'],
    ['constructor', '140 mm starboard'],
  ])('but not of %s at %s', (name, across) => {
    expect(said([name, 560, across])).toEqual([])
  })

  it('can be written as the name has it where no other foot stands there', () => {
    expect(offered(aftPort, aftStbd, ['fwd-port', 560, '140 mm starboard'])).toEqual(['Write port'])
    expect(offered(aftPort, aftStbd, fwdPort, ['fwd-stbd', 560, '140 mm port'])).toEqual(['Write starboard'])
  })

  it('but not where two feet were exchanged, or all would stand on one side', () => {
    expect(offered(['aft-port', 180, '140 mm starboard'], ['aft-stbd', 180, '140 mm port'])).toEqual([])
    expect(offered(aftPort, ['fwd-port', 560, '140 mm starboard'])).toEqual([])
    expect(offered(['middle', 180, '0 mm'], ['fwd-port', 560, '140 mm starboard'])).toEqual([])
  })
})

describe('the end in a name', () => {
  it('is contradicted where aft stands further forward than forward', () => {
    expect(said(['aft-port', 560, '140 mm port'], ['fwd-port', 180, '140 mm port'])).toEqual([
      'Foot aft-port is named for aft, but it is further forward than fwd-port.',
    ])
    expect(said(['aft', -180, '140 mm port'], ['forward', -560, '140 mm port'])).toHaveLength(1)
    expect(offered(['aft', 560, '140 mm port'], ['fwd', 180, '140 mm starboard'])).toEqual([])
  })

  it('but not on a machine that stands aft of its coupling, nor by feet without both words', () => {
    expect(said(['aft', -560, '140 mm port'], ['fwd', -180, '140 mm port'])).toEqual([])
    expect(said(['aft', 560, '140 mm port'], ['mid', 180, '140 mm port'])).toEqual([])
    expect(said(['aft', 180, '140 mm port'], ['fwd', 180, '140 mm starboard'])).toEqual([])
    // Feet within a millimetre are at one station.
    expect(said(['aft', 560.4, '140 mm port'], ['fwd', 560, '140 mm starboard'])).toEqual([])
  })
})

it('is waited for by the plan: a wrong name gets the wrong nut turned', () => {
  const found = findingsOf(
    bed(aftPort, aftStbd, fwdPort, ['fwd-stbd', 560, '140 mm port']),
    check ? [check] : [],
  )
  expect(found.findings.map(({ plan }) => plan)).toEqual(['waits'])
})
