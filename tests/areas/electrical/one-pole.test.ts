// Which poles a fuse or an isolator opens, by the earthing of the negative: ISO 13297 and ABYC E-11, from memory.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const cable = (name: string, more = '') =>
  `cable ${name} { from: house  to: main.controller  conductor: 95 mm2  length: 2 m  insulation: 105 degC  ${more} }\n`
const boat = (earthing: string, parts: string) => `job "Launch" { vessel: "Launch 07"  ${earthing} }
battery house { nominal: 96 V  window: 84..108 V }
drive main { controller { input: 72..120 V } }
${parts}`
const fuse = (poles: string, within = 'feed') =>
  `protection ${within}-fuse { kind: fuse  rating: 315 A  in: ${within}  at: 100 mm  poles: ${poles} }\n`
const isolator = (poles: string) => `isolator main-switch { in: feed  at: 0.3 m  poles: ${poles} }\n`
const found = (earthing: string, parts: string) =>
  findingsOf(boat(earthing, parts), allChecks).findings.flatMap((one) =>
    one.check === 'switch/one-pole' ? [`${one.severity}: ${one.message}`] : [],
  )

describe('a fuse or isolator that opens one pole', () => {
  it.each([
    [
      'dc-negative: insulated',
      'positive',
      ['warning: It opens the positive pole alone; the negative is insulated.'],
    ],
    [
      'dc-negative: insulated',
      'negative',
      ['warning: It opens the negative pole alone; the negative is insulated.'],
    ],
    ['dc-negative: insulated', 'both', []],
    ['dc-negative: bonded', 'positive', []],
    ['dc-negative: bonded', 'negative', ['error: It opens the negative pole alone, which is bonded.']],
    ['', 'positive', []],
  ])('%s, %s', (earthing, poles, said) => {
    expect(found(earthing, `${cable('feed')}${fuse(poles)}`)).toEqual(said)
    expect(found(earthing, `${cable('feed')}${isolator(poles)}`)).toEqual(said)
  })

  it('is enough beside one of its kind in the other pole', () => {
    const parts = `${cable('plus', 'pole: positive')}${cable('minus', 'pole: negative')}${fuse('positive', 'plus')}`
    expect(found('dc-negative: insulated', parts)).toHaveLength(1)
    expect(found('dc-negative: insulated', `${parts}${fuse('negative', 'minus')}`)).toEqual([])
  })
})
