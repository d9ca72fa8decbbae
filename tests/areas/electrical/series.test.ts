// Batteries in series: Kirchhoff's voltage law; two in series by three strings give the current of one times three (ABYC-based note: six units of
// 2 400 A, 2 in series by 3, give 7 200 A).
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { resultsIn } from '../results-in.ts'

const battery = (name: string, more = 'internal-resistance: 7 mohm') =>
  `battery ${name} { nominal: 48 V  window: 42..54 V  capacity: 210 Ah  ${more} }\n`
const cable = (name: string, from: string, to: string, more = '') =>
  `cable ${name} { from: ${from}  to: ${to}  conductor: 95 mm2  length: 1 m  insulation: 105 degC  place: open  ${more} }\n`
const link = (from: string, to: string) => cable(`${from}-${to}`, from, to, 'pole: series')
const fuse = (within: string, more = 'rating: 250 A') =>
  `protection ${within}-fuse { kind: fuse  ${more}  in: ${within}  at: 100 mm }\n`
const drive = `drive main {
  motor m { power: 8.4 kW  efficiency: 100 %  voltage: 50 V  power-factor: 1 }
  controller { input: 72..120 V  efficiency: 100 % }
}
`
const feed = (from: string) => cable('feed', from, 'main.controller')
const two = `${battery('a')}${battery('b')}${link('a', 'b')}`

const figureOf = (text: string, id: string, name: string): number | undefined =>
  resultsIn(text).results.find(({ figure, block }) => figure.id === id && block.name === name)?.amount?.value
const found = (text: string, check: string) =>
  findingsOf(text, allChecks).findings.flatMap((one) => (one.check === check ? [one.message] : []))

describe('batteries in series', () => {
  it.each(['a', 'b'])('are one string, whichever of them the cable leaves: %s', (from) => {
    const text = `${two}${feed(from)}${fuse('feed', 'rating: 250 A  voltage: 80 V')}${drive}`
    for (const one of ['a', 'b']) {
      expect(figureOf(text, 'battery/highest-voltage', one)).toBeCloseTo(108, 9)
      expect(figureOf(text, 'battery/short-circuit-current', one)).toBeCloseTo(108 / 0.014, 6)
    }
    // 8.4 kW at 84 V.
    expect(figureOf(text, 'cable/current', 'feed')).toBeCloseTo(100, 0)
    // 1 m of 95 mm² between them, 100 mm out and back before the fuse: 0.210 Ω/km at 20 °C (IEC 60228).
    expect(figureOf(text, 'protection/short-circuit-current', 'feed-fuse')).toBeCloseTo(
      108 / (0.014 + 1.2 * 0.21e-3),
      6,
    )
    expect(found(text, 'protection/voltage-below')).toEqual([
      'The rated voltage is 80 V; the circuit reaches 108 V.',
    ])
    expect(found(text, 'cable/controller-input-outside')).toEqual([])
  })

  it('carry one current: a cable between them carries what the string feeds, and loses voltage in one conductor', () => {
    const text = `${two}${feed('a')}${fuse('feed')}${drive}`
    expect(figureOf(text, 'cable/current', 'a-b')).toBeCloseTo(100, 0)
    const [own, both] = ['a-b', 'feed'].map(
      (name) => figureOf(text, 'cable/voltage-drop', name) ?? Number.NaN,
    )
    expect(own).toBeCloseTo((both ?? Number.NaN) / 2, 12)
  })

  it('with a current each: voltage over that current is the resistance, and the least current proves nothing', () => {
    const text = `${battery('a', 'short-circuit-current: 9 kA')}${battery('b', 'short-circuit-current: 3 kA')}${link('a', 'b')}`
    expect(figureOf(text, 'battery/short-circuit-current', 'a')).toBeCloseTo(108 / (54 / 9000 + 54 / 3000), 6)
  })

  it('with one that does not say its resistance have no short-circuit current', () => {
    expect(
      figureOf(`${battery('a')}${battery('b', '')}${link('a', 'b')}`, 'battery/short-circuit-current', 'a'),
    ).toBeUndefined()
  })

  it('side by side add up in current: two in series by three', () => {
    const strings = [1, 2, 3].map(
      (i) =>
        `${battery(`a${i}`)}${battery(`b${i}`)}${link(`a${i}`, `b${i}`)}${cable(`lead${i}`, `b${i}`, 'bus')}${fuse(`lead${i}`)}`,
    )
    const text = `${strings.join('')}busbar bus { current: 600 A }\n${cable('feed', 'bus', 'main.controller')}${drive}`
    // At the fuse of the first: its own string, and the two others over the rest of the lead. 0.210 Ω/km at 20 °C (IEC 60228).
    const string = 0.014 + 0.21e-3
    const [before, behind, lead] = [0.1, 0.9, 1].map((length) => 2 * length * 0.21e-3) as [
      number,
      number,
      number,
    ]
    expect(figureOf(text, 'protection/short-circuit-current', 'lead1-fuse')).toBeCloseTo(
      108 / (string + before) + 108 / (behind + (string + lead) / 2),
      5,
    )
    expect(found(text, 'protection/none')).toEqual([])
    expect(found(text.replace(fuse('lead2'), ''), 'protection/none')).not.toEqual([])
  })

  it('need a fuse for the string, not for each cable in it', () => {
    expect(found(`${two}${feed('a')}${fuse('feed')}${drive}`, 'protection/none')).toEqual([])
    expect(found(`${two}${feed('a')}${drive}`, 'protection/none')).toHaveLength(1)
  })

  it('with a fuse between them have one, and it opens all', () => {
    const text = `${two}${fuse('a-b')}${feed('a')}${drive}`
    expect(found(text, 'protection/none')).toEqual([])
    expect(figureOf(text, 'protection/highest-voltage', 'a-b-fuse')).toBeCloseTo(108, 9)
  })

  it('too thin a cable between them for the fuse of the string is found', () => {
    const thin = two.replace('conductor: 95 mm2', 'conductor: 16 mm2')
    expect(found(`${thin}${feed('a')}${fuse('feed')}${drive}`, 'cable/behind-large-fuse')).toHaveLength(1)
    expect(found(`${two}${feed('a')}${fuse('feed')}${drive}`, 'cable/behind-large-fuse')).toEqual([])
  })

  it('are as many as there are: four of 12 V are 48 V', () => {
    const names = ['a', 'b', 'c', 'd']
    const batteries = names
      .map((name) => `battery ${name} { nominal: 12 V  window: 10.5..14.4 V }\n`)
      .join('')
    const links = `${link('c', 'd')}${link('a', 'b')}${link('b', 'c')}`
    expect(figureOf(`${batteries}${links}`, 'battery/highest-voltage', 'c')).toBeCloseTo(57.6, 9)
  })

  it('without a pole on the cable stay side by side', () => {
    const text = `${battery('a')}${battery('b')}${cable('a-b', 'a', 'b')}${feed('a')}${drive}`
    expect(figureOf(text, 'battery/highest-voltage', 'a')).toBeCloseTo(54, 9)
    expect(found(text, 'cable/series-or-parallel')).toEqual([
      'The batteries a + b are side by side; in series they give 96 V.',
    ])
    expect(found(text.replace('72..120 V', '40..60 V'), 'cable/series-or-parallel')).toEqual([])
  })
})

describe('batteries that cannot be in series as written', () => {
  const rest = `${feed('a')}${fuse('feed')}${drive}`
  it.each([
    ['a ring', `${two}${link('b', 'a')}`, 'The cables in series join a + b in a ring: a short circuit.'],
    [
      'one used twice',
      `${two}${battery('c')}${link('a', 'c')}`,
      'Two cables in series are at the negative of this battery.',
    ],
    [
      'two before one',
      `${two}${battery('c')}${link('c', 'b')}`,
      'Two cables in series are at the positive of this battery.',
    ],
    [
      'both on one busbar',
      `${two}busbar bus { current: 600 A }\n${cable('x', 'a', 'bus')}${cable('y', 'b', 'bus')}`,
      'The batteries a + b are in series, and cables of both poles end at each.',
    ],
    [
      'series and parallel at once',
      `${two}${cable('both', 'a', 'b')}`,
      'The batteries a + b are in series, and cables of both poles end at each.',
    ],
  ])('%s', (_what, text, message) => {
    expect(found(`${text}${rest}`, 'battery/series-faulty')).toEqual([message])
    expect(figureOf(`${text}${rest}`, 'battery/highest-voltage', 'a')).toBeUndefined()
    expect(figureOf(`${text}${rest}`, 'cable/current', 'feed')).toBeUndefined()
  })

  it('but two cables beside each other are one way', () => {
    const text = `${two}${cable('second', 'a', 'b', 'pole: series')}${rest}`
    expect(found(text, 'battery/series-faulty')).toEqual([])
    expect(figureOf(text, 'battery/highest-voltage', 'a')).toBeCloseTo(108, 9)
  })

  it('a cable from a battery to itself joins nothing', () => {
    const text = `${battery('a')}${link('a', 'a')}${rest}`
    expect(found(text, 'cable/joins-itself')).toHaveLength(1)
    expect(figureOf(text, 'battery/highest-voltage', 'a')).toBeCloseTo(54, 9)
  })

  it('a pole that cannot be read leaves the voltage open', () => {
    const text = `${two.replace('pole: series', 'pole: seres')}${rest}`
    expect(figureOf(text, 'battery/highest-voltage', 'a')).toBeUndefined()
    expect(found(text, 'battery/series-faulty')).toEqual([])
  })

  it('unlike ones are named', () => {
    const unlike = `${battery('a', 'chemistry: agm')}${battery('b', 'chemistry: lfp').replace('210 Ah', '100 Ah')}${link('a', 'b')}`
    expect(found(unlike, 'battery/series-unlike')).toEqual([
      'Its capacity is 100 Ah, but that of a, in series with it, is 210 Ah.',
      'Its chemistry is lfp, but that of a, in series with it, is agm.',
    ])
  })
})

describe('what a string lasts', () => {
  const service = (
    batteries: string,
    lead: string,
  ) => `hull { calm-water-resistance: 4 kn 0.38 kN, 5 kn 0.62 kN, 6 kn 1.05 kN, 7 kn 2.2 kN, 8 kn 5 kN }
service { reserve: 20 %  point cruise { boat-speed: 5.5 kn  time: 1 h } }
${batteries}drive main {
  propeller { diameter: 460 mm  pitch: 340 mm  blades: 3  blade-area-ratio: 55 %  depth: 0.5 m }
  gear { ratio: 2.5 }
  motor turning { power: 15 kW  speed: 1500 rpm  max-speed: 2600 rpm }
  controller { input: 72..120 V }
}
${lead}`
  const one = (volts: number, capacity: string, name: string) =>
    `battery ${name} { nominal: ${volts} V  capacity: ${capacity}  chemistry: lfp  usable: 80 % }\n`
  const energyUsed = (text: string) =>
    resultsIn(text).results.find(({ figure }) => figure.id === 'service/energy-used')?.amount?.value
  const current = (text: string, name: string) => figureOf(text, 'battery/drive-current', name)

  it('is what one battery of the sum of the voltages lasts, with the capacity of the weakest', () => {
    const alone = service(one(96, '150 Ah', 'a'), cable('feed', 'a', 'main.controller'))
    const string = service(
      `${one(48, '210 Ah', 'a')}${one(48, '150 Ah', 'b')}${link('a', 'b')}`,
      cable('feed', 'a', 'main.controller'),
    )
    expect(energyUsed(string)).toBeCloseTo(energyUsed(alone) ?? Number.NaN, 9)
    for (const name of ['a', 'b'])
      expect(current(string, name)).toBeCloseTo(current(alone, 'a') ?? Number.NaN, 9)
  })
})
