// A load is made for one voltage. What the batteries before it have must be near that, also through busbars and switches.
import { expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const found = (text: string) =>
  findingsOf(text, allChecks)
    .findings.filter(({ check }) => check === 'supply/other-voltage')
    .map(({ found, limit }) => `${found}; ${limit}`)
const cable = (name: string, from: string, to: string) =>
  `cable ${name} { from: ${from}  to: ${to}  conductor: 10 mm2  length: 1 m  insulation: 105 degC }\n`
const bank = 'battery bank { nominal: 48 V  window: 42..54 V }\nbusbar bus { current: 200 A }\n'
const network = bank + cable('lead', 'bank', 'bus')
const load = (voltage: string) => `load lights { power: 100 W  voltage: ${voltage} }\n`

it.each([
  ['48 V', []],
  ['12 V', ['12 V; 42 V to 54 V']],
  ['24 V', ['24 V; 42 V to 54 V']],
  ['96 V', ['96 V; 42 V to 54 V']],
])('load for %s on a bus of 48 V', (voltage, findings) => {
  expect(found(network + load(voltage) + cable('feed', 'bus', 'lights'))).toEqual(findings)
})

it('a battery of another voltage on the same bus', () => {
  const low = `battery low { nominal: 12 V  window: 11..14 V }\n${cable('second', 'low', 'bus')}`
  expect(found(network + low + load('48 V') + cable('feed', 'bus', 'lights'))).toEqual(['48 V; 11 V to 14 V'])
})

it('a converter between them makes the voltage', () => {
  const converter = 'converter step { input: 36..60 V  output: 12..14 V  current: 30 A }\n'
  const text =
    network + converter + cable('in', 'bus', 'step') + load('12 V') + cable('feed', 'step', 'lights')
  expect(found(text)).toEqual([])
})

it('two batteries in series give the sum', () => {
  const half = (name: string) => `battery ${name} { nominal: 24 V  window: 21..27 V }\n`
  const series = `cable link { from: one  to: two  pole: series  conductor: 10 mm2  length: 1 m  insulation: 105 degC }\n`
  const text = half('one') + half('two') + series + load('48 V') + cable('feed', 'one', 'lights')
  expect(found(text)).toEqual([])
})

it('a nominal voltage that is a little beyond the window', () => {
  const text = `battery bank { nominal: 12.8 V  window: 12.4..14.6 V }\n${load('12 V')}${cable('feed', 'bank', 'lights')}`
  expect(found(text)).toEqual([])
})
