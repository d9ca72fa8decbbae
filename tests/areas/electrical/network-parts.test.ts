// Busbars, switches, loads, converters and chargers in one DC network: sums of currents by Kirchhoff, power over voltage and efficiency by definition.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { resultsIn } from '../results-in.ts'

const bank = (name = 'b') =>
  `battery ${name} { nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm }\n`
const cable = (name: string, from: string, to: string, more = 'conductor: 1000 mm2  length: 0.01 m') =>
  `cable ${name} { from: ${from}  to: ${to}  ${more}  insulation: 105 degC  place: open }\n`
const drive = (name: string) => `drive ${name} {
  motor m { power: 8.4 kW  efficiency: 100 %  voltage: 50 V  power-factor: 1 }
  controller { input: 72..120 V  efficiency: 100 % }
  ${cable('feed', 'bus', 'controller')}}
`
const currentOf = (text: string, name: string): number | undefined => {
  const found = resultsIn(text).results.find(
    ({ figure, block }) => figure.id === 'cable/current' && block.name === name,
  )
  return found?.amount?.value
}
const found = (text: string, check: string) =>
  findingsOf(text, allChecks).findings.flatMap((one) => (one.check === check ? [one.message] : []))
const isolated = `${cable('lead', 'b', 'main')}isolator main { current: 600 A  voltage: 150 V  to: bus }\nbusbar bus { current: 600 A }\n`

describe('what a cable carries', () => {
  it('is the sum of what lies behind it, through an isolator that is bolted to a busbar', () => {
    // 8.4 kW at 84 V is 100 A for each drive; 840 W is 10 A.
    const text = `${bank()}${isolated}${drive('port')}${drive('starboard')}load house { power: 840 W }\n${cable('to-house', 'bus', 'house')}`
    expect(currentOf(text, 'lead')).toBeCloseTo(210, 2)
    expect(currentOf(text, 'to-house')).toBeCloseTo(10, 2)
  })

  it('of a converter is its output at full current, over its efficiency', () => {
    const text = `${bank()}${isolated}converter low { input: 72..120 V  output: 26..28 V  current: 30 A  efficiency: 80 % }
${cable('in', 'bus', 'low')}load lights { power: 260 W }
${cable('out', 'low', 'lights')}`
    // 28 V · 30 A / 0.8 / 84 V = 12.5 A; 260 W at 26 V is 10 A.
    expect(currentOf(text, 'in')).toBeCloseTo(12.5, 2)
    expect(currentOf(text, 'lead')).toBeCloseTo(12.5, 2)
    expect(currentOf(text, 'out')).toBeCloseTo(10, 2)
  })

  it('is the current of a charger where nothing else comes through it, and at least that where it goes on to the battery', () => {
    const text = (amps: number) =>
      `${bank()}${isolated}charger shore { output: 84..108 V  current: ${amps} A }\n${cable('charge', 'shore', 'bus')}${drive('port')}`
    expect(currentOf(text(40), 'charge')).toBeCloseTo(40, 2)
    expect(currentOf(text(40), 'lead')).toBeCloseTo(100, 2)
    expect(currentOf(text(150), 'lead')).toBeCloseTo(150, 2)
    expect(currentOf(text(150), 'feed')).toBeCloseTo(100, 2)
  })

  it('is not known where a load does not say what it draws', () => {
    const text = `${bank()}${isolated}${drive('port')}load house { voltage: 96 V }\n${cable('to-house', 'bus', 'house')}`
    expect(currentOf(text, 'lead')).toBeUndefined()
    expect(found(text, 'cable/current-unknown').length).toBeGreaterThan(0)
  })
})

describe('a busbar that states its diversity', () => {
  // Two drives of 100 A and a load of 10 A: 210 A together, and some mA for the drop.
  const bus = (rated: number, more = '', lead = '') =>
    `${bank()}${isolated.replace('busbar bus { current: 600 A }', `busbar bus { current: ${rated} A  ${more} }`).replace('length: 0.01 m', `length: 0.01 m  ${lead}`)}${drive('port')}${drive('starboard')}load house { power: 840 W }\n${cable('to-house', 'bus', 'house')}`
  const overloaded = (text: string) => found(text, 'switch/overloaded')

  it.each([
    [209, '', true],
    [210.1, '', false],
    [167, 'diversity: 80 %', true],
    [168.1, 'diversity: 80 %', false],
    // One branch alone is 100 A.
    [99, 'diversity: 20 %', true],
    [100.1, 'diversity: 20 %', false],
    [209, 'diversity: 100 %', true],
    // Not read, so not assumed.
    [209, 'diversity: 5 %', true],
    [209, 'diversity: ?', true],
  ])('of %i A, %j', (rated, more, isFound) => {
    expect(overloaded(bus(rated, more))).toHaveLength(isFound ? 1 : 0)
  })

  it('lowers no cable, switch or fuse', () => {
    expect(currentOf(bus(168, 'diversity: 80 %'), 'lead')).toBeCloseTo(210, 2)
    const text = bus(168.1, 'diversity: 80 %').replace(
      'isolator main { current: 600 A',
      'isolator main { current: 209 A',
    )
    expect(overloaded(text)).toContain('It is rated for 209 A but carries 211 A.')
  })

  it('counts in full what its feed states and what is charged', () => {
    const direct = (stated: string) =>
      bus(168.1, 'diversity: 80 %', stated)
        .replace('to: main', 'to: bus')
        .replace(/isolator .*\n/, '')
    expect(overloaded(direct(''))).toEqual([])
    expect(overloaded(direct('design-current: 200 A'))).toHaveLength(1)
    const charger = (amps: number) =>
      `charger shore { output: 84..108 V  current: ${amps} A }\n${cable('charge', 'shore', 'bus')}`
    expect(overloaded(bus(168.1, 'diversity: 80 %') + charger(168))).toEqual([])
    expect(overloaded(bus(168, 'diversity: 80 %') + charger(180))).toHaveLength(1)
    expect(overloaded(bus(230, 'diversity: 80 %') + charger(240))).toHaveLength(1)
  })
})

describe('a fuse by its place', () => {
  const fed = (at: string, more = '') =>
    `${bank()}${isolated.replace('length: 0.01 m', `length: 1 m ${more}`)}protection f { kind: fuse  rating: 250 A  in: lead  at: ${at} }\n${drive('port')}`
  // 33 CFR 183.455(b)(2): 40 in.
  it('leaves the conductor before it unprotected', () => {
    expect(found(fed('150 mm'), 'protection/far-from-source')).toEqual([])
    expect(
      found(
        fed('1 m').replace('length: 1 m', 'length: 3 m').replace('at: 1 m', 'at: 2.5 m'),
        'protection/far-from-source',
      ),
    ).toEqual(['The distance to the battery is 2.5 m (98.425 in); at most 1.016 m (40 in) is allowed.'])
  })

  it('counts all conductor back to the battery, through a switch too', () => {
    const text = `${bank()}${isolated}${drive('port')}`
      .replaceAll('0.01 m', '1 m')
      .replace(
        'drive port {',
        'drive port {\n  protection f { kind: fuse  rating: 250 A  in: feed  at: 0.5 m }',
      )
    expect(found(text, 'protection/far-from-source')).toEqual([
      'The distance to the battery is 1.5 m (59.055 in); at most 1.016 m (40 in) is allowed.',
    ])
    expect(found(text, 'protection/none')).toEqual([])
  })

  it('does not protect what another branch of the busbar feeds', () => {
    const text =
      `${bank()}${isolated}${drive('port')}load house { power: 840 W }\n${cable('to-house', 'bus', 'house')}`.replace(
        'drive port {',
        'drive port {\n  protection f { kind: fuse  rating: 250 A  in: feed  at: 0 m }',
      )
    // Lead and branch: both feed the house without a fuse.
    expect(found(text, 'protection/none')).toHaveLength(2)
  })

  it('beyond the end of its cable, or in none, is an error', () => {
    expect(found(fed('3 m'), 'protection/beyond-cable')).toHaveLength(1)
    expect(
      found(`${bank()}${isolated}${drive('port')}isolator lost { current: 100 A }\n`, 'protection/nowhere'),
    ).toHaveLength(1)
  })

  it('written by its former names is asked to be written by the new ones', () => {
    const old = fed('150 mm').replace('in: lead  at: 150 mm', 'protects: lead  from-source: 150 mm')
    const todo = findingsOf(old, allChecks).findings.flatMap(({ check, todo }) =>
      check === 'job/fact-unknown' ? [todo] : [],
    )
    expect(todo.join(' ')).toContain('in: lead')
    expect(todo.join(' ')).toContain('at: 150 mm')
  })
})

describe('the output of a converter', () => {
  it('is protected by the limit of the converter, and judged by its own voltage', () => {
    const text = (
      area: string,
      volts: number,
    ) => `${bank()}${isolated}converter low { input: 72..120 V  output: 26..28 V  current: 60 A }
${cable('in', 'bus', 'low')}load lights { power: 260 W }
${cable('out', 'low', 'lights', `conductor: ${area}  length: 1 m`)}protection f { kind: fuse  rating: 20 A  voltage: ${volts} V  in: out  at: 0.5 m }`
    // 1.5 mm², 105 °C: ISO 13297 Table A.1 25 A (from memory), and 150 % of it below 50 V, 33 CFR 183.455(c)(1).
    expect(found(text('1.5 mm2', 32), 'cable/behind-large-fuse')).toHaveLength(1)
    expect(found(text('10 mm2', 32), 'cable/behind-large-fuse')).toEqual([])
    expect(found(text('10 mm2', 32), 'protection/voltage-below')).toEqual([])
    expect(found(text('10 mm2', 24), 'protection/voltage-below')).toHaveLength(1)
  })
})

it('whatever the network is made of, nothing throws and no figure is infinite', () => {
  const jobs = [
    `${bank()}${cable('x', 'b', 'b')}`,
    `busbar bus { }\n${cable('x', 'bus', 'bus')}protection f { kind: fuse  rating: 10 A  in: x  at: 0 m }`,
    `isolator one { from: two  to: two }\nisolator two { from: one  to: one }\n`,
    `${bank()}contactor k { from: b  to: k }\n`,
    `converter c { input: 72..120 V  output: 26..28 V  current: 1 A }\n${cable('x', 'c', 'c')}`,
    `${bank()}${cable('x', 'b', 'l', 'conductor: 95 mm2  length: 0.01 m')}load l { current: 20000 A }\nprotection f { kind: fuse  rating: 10 A  in: x  at: 1000 m }\nprotection g { kind: fuse  rating: 10 A  in: x }\nprotection h { kind: fuse  in: x }\n`,
  ]
  for (const job of jobs) {
    expect(findingsOf(job, allChecks).findings.filter(({ check }) => check === 'job/internal-error')).toEqual(
      [],
    )
    for (const { amount } of resultsIn(job).results)
      if (amount) expect(Number.isFinite(amount.value)).toBe(true)
  }
})

describe('a switch or busbar', () => {
  const rated = (amps: number, busAmps: number) =>
    `${bank()}${isolated}${drive('port')}${drive('starboard')}load house { power: 840 W }\n${cable('to-house', 'bus', 'house')}`
      .replace('current: 600 A  voltage', `current: ${amps} A  voltage`)
      .replace('bus { current: 600 A', `bus { current: ${busAmps} A`)
  // Two drives of 8.4 kW at 84 V and 840 W: 210 A.
  it('is held against the sum of all that comes through it (Kirchhoff)', () => {
    expect(found(rated(210.1, 210.1), 'switch/overloaded')).toEqual([])
    expect(found(rated(200, 210.1), 'switch/overloaded')).toEqual([
      'It is rated for 200 A but carries 211 A.',
    ])
    expect(found(rated(210.1, 200), 'switch/overloaded')).toEqual([
      'It is rated for 200 A but carries 211 A.',
    ])
  })

  it('counts what strings state as their share together', () => {
    const shares = (amps: number) =>
      `${bank()}${bank('s')}isolator main { current: ${amps} A  to: bus }\nbusbar bus { }\n${cable('one', 'b', 'main', 'conductor: 95 mm2  length: 1 m  design-current: 105 A')}${cable('two', 's', 'main', 'conductor: 95 mm2  length: 1 m  design-current: 105 A')}${drive('port')}${drive('starboard')}`
    expect(found(shares(210), 'switch/overloaded')).toEqual([])
    expect(found(shares(200), 'switch/overloaded')).toHaveLength(1)
  })

  it('is held against the highest voltage of the battery', () => {
    expect(found(rated(300, 300), 'switch/voltage-below')).toEqual([])
    expect(found(rated(300, 300).replace('voltage: 150 V', 'voltage: 96 V'), 'switch/voltage-below')).toEqual(
      ['The rated voltage is 96 V; the circuit reaches 108 V.'],
    )
  })
})
