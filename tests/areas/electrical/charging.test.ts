// What charges a battery, by the cables that join them, against what the battery takes.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const found = (text: string) =>
  findingsOf(text, allChecks)
    .findings.filter(({ check }) => check.startsWith('battery/charge-'))
    .map(({ check, message }) => `${check.slice('battery/charge-'.length)}: ${message}`)
    .sort()

const house = 'battery house { nominal: 96 V  window: 84..108 V  charge-current: 100 A }\n'
const second = 'battery aux { nominal: 96 V  window: 84..108 V  charge-current: 100 A }\n'
const bus = 'busbar bus { current: 600 A }\ncable lead { from: house  to: bus }\n'
const charger = (name: string, amps: number, to = 'bus', high = 108) =>
  `charger ${name} { output: 84..${high} V  current: ${amps} A }\ncable of-${name} { from: ${name}  to: ${to} }\n`

describe('what charges a battery', () => {
  it('adds up, through busbars, fuses and switches', () => {
    const both = charger('shore', 60) + charger('alternator', 60)
    const expected = ['current-beyond: What charges here gives 120 A, but the battery takes 100 A.']
    expect(found(house + bus + both)).toEqual(expected)
    expect(found(`${house + bus + both}protection f { rating: 300 A  in: lead }`)).toEqual(expected)
    expect(
      found(
        `${house}isolator main { current: 500 A }\ncable a { from: house  to: main }\n${charger('shore', 120, 'main')}`,
      ),
    ).toEqual(expected)
    expect(found(house + bus + charger('shore', 100))).toEqual([])
  })

  it('is shared by batteries side by side, and reported once', () => {
    const more = 'cable more { from: aux  to: bus }\n'
    expect(found(house + second + bus + more + charger('shore', 200))).toEqual([])
    expect(found(house + second + bus + more + charger('shore', 201))).toEqual([
      'current-beyond: What charges here gives 201 A, but the batteries take 200 A.',
    ])
  })

  it('is the least of a string in series, at twice the voltage', () => {
    const weak = second.replace('charge-current: 100 A', 'charge-current: 50 A')
    const string = `${house + weak}cable link { from: house  to: aux  pole: series }
cable plus { from: house  to: bus  pole: positive }
cable minus { from: aux  to: bus  pole: negative }
busbar bus { current: 600 A }
`
    expect(found(string + charger('shore', 60, 'bus', 216))).toEqual([
      'current-beyond: What charges here gives 60 A, but the battery takes 50 A.',
    ])
    expect(found(string + charger('shore', 50, 'bus', 217))).toEqual([
      'voltage-beyond: shore charges at up to 217 V; the battery goes to 216 V.',
    ])
  })

  it('is no charger of another circuit', () => {
    expect(found(`${house + second}${charger('shore', 120, 'aux')}`)).toHaveLength(1)
    expect(found(`${house}battery aux { nominal: 24 V }\n${charger('shore', 120, 'aux')}`)).toEqual([])
  })

  it('is a converter at its output, not at its input', () => {
    const converter = (from: string, to: string) =>
      `battery low { nominal: 24 V  window: 22..28 V  charge-current: 30 A }
converter c { input: 72..120 V  output: 26..28.8 V  current: 40 A }
cable in { from: ${from}  to: c }
cable out { from: c  to: ${to} }
`
    expect(found(house + converter('house', 'low'))).toEqual([
      'current-beyond: What charges here gives 40 A, but the battery takes 30 A.',
      'voltage-beyond: c charges at up to 28.8 V; the battery goes to 28 V.',
    ])
  })
})
