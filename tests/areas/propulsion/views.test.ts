// What a hover shows of the hull and of the service.
import { expect, it } from 'vitest'
import { hoverAt } from '../../editor/fixture.ts'
import { type BoatText, boat } from './boat.ts'

/** The hover over the heading of a block of this kind. */
const shown = (kind: string, parts: BoatText): string =>
  hoverAt(boat(parts).replace(`${kind} {`, `$0${kind} {`))?.markdown ?? ''

/** The cells of the rows of a table that begin with one of these. */
const rowsOf = (markdown: string, names: readonly string[]): readonly (readonly string[])[] =>
  markdown
    .split('\n')
    .map((line) => line.split('|').map((cell) => cell.trim()))
    .filter(([, name = '']) => names.includes(name))
    .map((cells) => cells.slice(1, -1))

const twoLegs =
  'water: sea  water-temperature: 15 degC  reserve: 20 %  sea-margin: 10 %  point out { boat-speed: 5 kn  time: 1 h } point home { boat-speed: 4 kn  time: 30 min }'

// Energy balance: 96 V · 210 Ah · 80 % · (1 − 20 %) = 12.9 kWh may be used, so a leg takes power · time / 12.9 kWh of it.
it('the service has its legs: speed, time, power, energy and the share of the bank, and all of them', () => {
  const hover = shown('service', { service: twoLegs })
  const rows = rowsOf(hover, ['out', 'home', 'all'])
  expect(rows).toEqual([
    ['out', '5 kn', '1 h', '3.68 kW', '3.68 kWh', '28.6 %'],
    ['home', '4 kn', '0.5 h', '1.79 kW', '0.894 kWh', '6.93 %'],
    ['all', '', '1.5 h', '', '4.58 kWh', '35.5 %'],
  ])
  for (const [, , , , energy = '', share = ''] of rows)
    expect(Number.parseFloat(share) / (Number.parseFloat(energy) / (0.096 * 210 * 0.64))).toBeCloseTo(100, 0)
  expect(hover).toContain('| Energy of the service | 35.5 % |')
})

it('a leg of which something is not known has that cell empty, and there is no sum', () => {
  const service =
    'point out { boat-speed: 5 kn } point fast { boat-speed: 9 kn  time: 1 h } point idle { time: 2 h }'
  const hover = shown('service', { service })
  expect(rowsOf(hover, ['out', 'fast', 'idle', 'all'])).toEqual([
    ['out', '5 kn', '', '3.28 kW', '', ''],
    ['fast', '9 kn', '1 h', '', '', ''],
    ['idle', '', '2 h', '', '', ''],
  ])
})

it.each([
  ['no battery', { battery: '' }, 'Which battery feeds main is not clear.'],
  ['no hull', { hull: '' }, 'The hull is not described'],
  ['no point', { service: 'water: sea' }, 'The service has no point.'],
] as const)('with %s the service says what is missing, without a table', (_, parts, words) => {
  const hover = shown('service', parts)
  expect(hover).toContain(words)
  expect(hover).not.toContain('| point |')
})

it('a battery says why no current is known', () => {
  const hover = shown('battery house', { motor: '', service: 'reserve: 20 %' })
  expect(hover).toContain('Neither a motor nor a point of the service is stated.')
})

it('one leg needs no sum', () => {
  expect(rowsOf(shown('service', {}), ['cruise', 'all'])).toHaveLength(1)
})

it('the hull has the power table, each column with its own figure', () => {
  const rows = rowsOf(shown('hull', {}), ['5 kn'])
  // 620 N · 1.1; 2.5 turns of the motor for one; 3.25 kW / (0.92 · 0.96); 12.9 kWh / 3.68 kW; 5 kn · 3.5 h.
  expect(rows).toEqual([['5 kn', '682 N', '636 rpm', '1590 rpm', '3.25 kW', '3.68 kW', '3.5 h', '17.5 nmi']])
})
