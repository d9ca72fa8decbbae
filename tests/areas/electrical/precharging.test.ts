// What a precharge does, in jobs: figures by hand from RC charging, and jobs in which it is missing, too weak, or for nothing.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { resultsIn } from '../results-in.ts'

const bank = 'battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 15 mohm }'
const contactor = 'contactor main-contactor { current: 250 A  voltage: 150 V  makes: 500 A }'
const job = (parts: {
  controller?: string
  precharge?: string
  more?: string
  bank?: string
  contactor?: string
}) =>
  `job "Launch" { vessel: "Launch 07" }
${parts.bank ?? bank}
drive main {
  controller { input: 72..120 V  ${parts.controller ?? 'capacitance: 6.8 mF'} }
  ${parts.contactor ?? contactor}
  ${parts.precharge === undefined ? '' : `precharge { around: main-contactor  ${parts.precharge} }`}
  ${parts.more ?? ''}
}`
const found = (text: string) =>
  findingsOf(text, allChecks).findings.filter(({ check }) => check.startsWith('precharge/'))
const ids = (text: string) =>
  found(text)
    .map(({ check, severity }) => `${severity} ${check.slice('precharge/'.length)}`)
    .sort()

describe('a controller with a capacitance', () => {
  it.each([
    ['without a precharge', job({}), ['warning none']],
    ['with one built in', job({ controller: 'capacitance: 6.8 mF  built-in-precharge: yes' }), []],
    [
      'with none built in',
      job({ controller: 'capacitance: 6.8 mF  built-in-precharge: no' }),
      ['warning none'],
    ],
    ['with a precharge', job({ precharge: 'resistance: 47 ohm' }), []],
    ['of a capacitance that is not stated', job({ controller: '' }), []],
    ['so small that its charge is harmless', job({ controller: 'capacitance: 20 uF' }), []],
    [
      'with a precharge at the top of the file',
      `${job({})}\nprecharge { around: main-contactor  resistance: 47 ohm }`,
      [],
    ],
    [
      'two of them, the precharge is for the other',
      job({
        contactor: 'contactor main-contactor { current: 250 A  voltage: 150 V  to: left }',
        precharge: 'resistance: 47 ohm',
        more: 'controller left { input: 72..120 V  capacitance: 6.8 mF }',
      }),
      ['warning none'],
    ],
    [
      'and a precharge for nothing',
      job({ controller: 'capacitance: 6.8 mF  built-in-precharge: yes', precharge: 'resistance: 47 ohm' }),
      ['warning around-nothing'],
    ],
  ])('%s', (_, text, expected) => {
    expect(ids(text)).toEqual(expected)
  })
})

// Which controllers hang behind the switch follows from the cables.
describe('with cables, a precharge charges', () => {
  const drive = (name: string, from: string, more = '') =>
    `drive ${name} {
  controller { input: 72..120 V  capacitance: 6.8 mF }
  cable feed { from: ${from}  to: controller  conductor: 95 mm2  length: 2 m }
  ${more}
}
`
  const main =
    'contactor main { current: 400 A  voltage: 150 V }\ncable lead { from: house  to: main  conductor: 95 mm2  length: 1 m }\n'
  const bus = 'busbar bus { }\ncable on { from: main  to: bus  conductor: 95 mm2  length: 1 m }\n'
  const around = 'precharge { around: main  resistance: 47 ohm }\n'
  const energiesIn = (text: string) =>
    resultsIn(text).results.flatMap(({ figure, amount }) =>
      figure.id === 'precharge/energy' ? [amount.value] : [],
    )
  const energyOf = (text: string) => energiesIn(text)[0]

  it('both controllers behind a contactor before the bus: ½ · 13.6 mF · (108 V)²', () => {
    const text = `${bank}\n${main}${bus}${around}${drive('port', 'bus')}${drive('starboard', 'bus')}`
    expect(energyOf(text)).toBeCloseTo(0.5 * 13.6e-3 * 108 ** 2, 6)
    expect(ids(text)).toEqual([])
  })

  it('only the one that its contactor feeds, though it is written at the top of the file', () => {
    const text = `${bank}\n${main}${around}${drive('port', 'main')}${drive('starboard', 'house')}`
    expect(energyOf(text)).toBeCloseTo(0.5 * 6.8e-3 * 108 ** 2, 6)
    expect(ids(text)).toEqual(['warning none'])
  })

  it('not what lies behind another contactor with a precharge of its own', () => {
    const own =
      'contactor k { current: 250 A  voltage: 150 V  in: feed }\nprecharge { around: k  resistance: 33 ohm }'
    const text = `${bank}\n${main}${bus}${around}${drive('port', 'bus')}${drive('starboard', 'bus', own)}`
    const energies = energiesIn(text)
    for (const energy of energies) expect(energy).toBeCloseTo(0.5 * 6.8e-3 * 108 ** 2, 6)
    expect(energies).toHaveLength(2)
  })
})

describe('a precharge', () => {
  it.each([
    // ½ · 6.8 mF · (108 V)² = 39.66 J
    ['resistance: 47 ohm  energy: 39.7 J', []],
    ['resistance: 47 ohm  energy: 39.6 J', ['error energy']],
    ['resistance: 4.7 ohm  energy: 39.6 J', ['error energy']],
    // 39.66 J / 10 s = 3.97 W
    ['resistance: 47 ohm  power: 4 W  interval: 10 s', []],
    ['resistance: 47 ohm  power: 3.9 W  interval: 10 s', ['error power']],
    ['resistance: 47 ohm  power: 4 W', ['information repeat-rate']],
    // τ = 0.3196 s: 90 % after 0.736 s
    ['resistance: 47 ohm  closes-after: 0.73 s', ['warning closing-surge', 'warning time']],
    ['resistance: 47 ohm  closes-after: 2 s', []],
    ['resistance: 47 ohm  closes-at: 95 %  closes-after: 0.9 s', ['warning time']],
    ['resistance: 47 ohm  closes-at: 95 %  closes-after: 1 s', []],
    // 6.9 % of 108 V over 15 mΩ = 497 A, 7 % are 504 A
    ['resistance: 47 ohm  closes-at: 93.1 %', []],
    ['resistance: 47 ohm  closes-at: 93 %', ['warning closing-surge']],
    ['resistance: 47 ohm  closes-at: 100 %', ['error time']],
    ['closes-at: 50 %  energy: 1 J', []],
    ['resistance: ?  closes-at: 50 %  energy: 1 J', []],
  ])('%s', (precharge, expected) => {
    expect(ids(job({ precharge }))).toEqual(expected)
  })

  it('with a discharge resistance across ends below the voltage of the battery: 1000 / (47 + 1000) = 95.5 %', () => {
    const across = (at: string) =>
      ids(
        job({
          controller: 'capacitance: 6.8 mF  discharge-resistance: 1 kohm',
          precharge: `resistance: 47 ohm  closes-at: ${at}`,
        }),
      )
    expect(across('95 %')).toEqual([])
    expect(across('96 %')).toEqual(['error time'])
  })

  it('is not judged where the voltage or the resistance of the bank is not stated', () => {
    const text = (stated: string) =>
      job({ bank: `battery house { ${stated} }`, precharge: 'resistance: 47 ohm  closes-at: 90 %' })
    expect(ids(text('nominal: 96 V  window: 84..108 V'))).toEqual([])
    expect(ids(text('nominal: 96 V  window: 84..108 V  internal-resistance: 15 mohm'))).toEqual([
      'warning closing-surge',
    ])
  })

  it('has figures: τ, time, currents, energy, power', () => {
    const precharge = 'resistance: 47 ohm  energy: 120 J  power: 25 W  closes-at: 95 %  interval: 60 s'
    const { results } = resultsIn(job({ precharge }))
    const of = (id: string) => results.find(({ figure }) => figure.id === `precharge/${id}`)
    const value = (id: string) => of(id)?.amount.value
    expect(value('time-constant')).toBeCloseTo(47 * 6.8e-3, 12)
    expect(value('time-to-close')).toBeCloseTo(-47 * 6.8e-3 * Math.log(0.05), 9)
    expect(value('peak-current')).toBeCloseTo(108 / 47, 9)
    expect(value('energy')).toBeCloseTo(0.5 * 6.8e-3 * 108 ** 2, 6)
    expect(value('mean-power')).toBeCloseTo((0.5 * 6.8e-3 * 108 ** 2) / 60, 6)
    expect(value('closing-surge')).toBeCloseTo((0.05 * 108) / 0.015, 3)
    expect(['energy', 'mean-power', 'closing-surge'].map((id) => of(id)?.verdict)).toEqual([
      'within',
      'within',
      'within',
    ])
  })
})
