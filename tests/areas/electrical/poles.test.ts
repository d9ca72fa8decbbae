// A cable of one pole is one half of its loop: Ohm's law and Kirchhoff's current law. The figures are those of the same job with cables of both poles.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { resultsIn } from '../results-in.ts'

const bank = 'battery b { nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm }\n'
const cable = (name: string, from: string, to: string, more = '', size = '95 mm2') =>
  `cable ${name} { from: ${from}  to: ${to}  conductor: ${size}  length: 2 m  insulation: 105 degC  place: open  ${more} }\n`
const plus = (name: string, from: string, to: string, size?: string) =>
  cable(name, from, to, 'pole: positive', size)
const minus = (name: string, from: string, to: string, size?: string) =>
  cable(name, from, to, 'pole: negative', size)
const drive = `drive main {
  motor m { power: 8.4 kW  efficiency: 100 %  voltage: 50 V  power-factor: 1 }
  controller { input: 72..120 V  efficiency: 100 % }
}
`
const fuse = (within: string, rating = '250 A') =>
  `protection ${within}-fuse { kind: fuse  rating: ${rating}  interrupts: 20 kA  voltage: 150 V  in: ${within}  at: 100 mm }\n`
const figure = (text: string, id: string, name: string): number =>
  resultsIn(text).results.find((one) => one.figure.id === id && one.block.name === name)?.amount?.value ??
  Number.NaN
const found = (text: string, check: string) =>
  findingsOf(text, allChecks).findings.flatMap((one) => (one.check === check ? [one.message] : []))

const whole = `${bank}${cable('feed', 'b', 'main.controller')}${fuse('feed')}${drive}`
const parted = `${bank}${plus('p', 'b', 'main.controller')}${minus('n', 'b', 'main.controller')}${fuse('p')}${drive}`

describe('two cables of one pole each', () => {
  it('carry the current of the cable of both, each all of it', () => {
    for (const name of ['p', 'n'])
      expect(figure(parted, 'cable/current', name)).toBeCloseTo(figure(whole, 'cable/current', 'feed'), 9)
  })

  it('lose together what it loses: a thinner way back counts', () => {
    for (const name of ['p', 'n'])
      expect(figure(parted, 'cable/voltage-drop', name)).toBeCloseTo(
        figure(whole, 'cable/voltage-drop', 'feed'),
        12,
      )
    const thin = parted.replace(
      minus('n', 'b', 'main.controller'),
      minus('n', 'b', 'main.controller', '25 mm2'),
    )
    expect(figure(thin, 'cable/voltage-drop', 'p')).toBeGreaterThan(
      1.5 * figure(parted, 'cable/voltage-drop', 'p'),
    )
    expect(figure(thin, 'cable/voltage-drop', 'p')).toBeCloseTo(figure(thin, 'cable/voltage-drop', 'n'), 12)
  })

  it('are not side by side: the fuse in one lets as much through to the other, which may be too thin for it', () => {
    expect(found(parted, 'protection/none')).toEqual([])
    expect(found(parted, 'cable/behind-large-fuse')).toEqual([])
    const thin = parted.replace(
      minus('n', 'b', 'main.controller'),
      minus('n', 'b', 'main.controller', '25 mm2'),
    )
    expect(found(thin, 'cable/behind-large-fuse')).toHaveLength(1)
    expect(found(thin, 'cable/pole-alone')).toEqual([])
  })

  it('with no fuse in the positive are unprotected', () => {
    expect(found(parted.replace(fuse('p'), ''), 'protection/none')).toHaveLength(1)
  })

  it('of which one is missing count the one that is there twice, and say so', () => {
    const alone = parted.replace(minus('n', 'b', 'main.controller'), '')
    expect(figure(alone, 'cable/voltage-drop', 'p')).toBeCloseTo(
      figure(whole, 'cable/voltage-drop', 'feed'),
      12,
    )
    expect(found(alone, 'cable/pole-alone')).toEqual([
      'No cable of the negative pole ends at b, main.controller.',
    ])
    const other = parted.replace(plus('p', 'b', 'main.controller'), '').replace(fuse('p'), '')
    expect(found(other, 'cable/pole-alone')).toEqual([
      'No cable of the positive pole ends at b, main.controller.',
    ])
    expect(figure(other, 'cable/current', 'n')).toBeCloseTo(100, 0)
  })

  it('may go different ways, over a switch in the positive and a busbar in the negative', () => {
    const ways = `${bank}isolator main-switch { current: 300 A  voltage: 150 V }\nbusbar common { current: 300 A }
${plus('p1', 'b', 'main-switch')}${plus('p2', 'main-switch', 'main.controller')}${minus('n1', 'b', 'common')}${minus('n2', 'common', 'main.controller')}${fuse('p1')}${drive}`
    for (const name of ['p1', 'p2', 'n1', 'n2'])
      expect(figure(ways, 'cable/current', name)).toBeCloseTo(100, 0)
    expect(found(ways, 'cable/pole-alone')).toEqual([])
    expect(found(ways, 'protection/none')).toEqual([])
    const small = (what: string) =>
      found(ways.replace(what, what.replace('300 A', '90 A')), 'switch/overloaded')
    expect(small('isolator main-switch { current: 300 A')).toHaveLength(1)
    expect(small('busbar common { current: 300 A')).toHaveLength(1)
  })

  it('are counted each on the stud of its pole', () => {
    const loads = (pole: (i: number) => string) =>
      `${bank}${[1, 2, 3, 4].map((i) => `load l${i} { power: 96 W }\n${cable(`c${i}`, 'b', `l${i}`, pole(i))}`).join('')}${cable('c5', 'b', 'main.controller')}${drive}`
    expect(
      found(
        loads(() => ''),
        'cable/too-many-lugs',
      ),
    ).toHaveLength(1)
    expect(
      found(
        loads((i) => (i % 2 === 0 ? 'pole: positive' : 'pole: negative')),
        'cable/too-many-lugs',
      ),
    ).toEqual([])
  })
})

describe('a string with a cable of each pole', () => {
  const half = (name: string) =>
    `battery ${name} { nominal: 48 V  window: 42..54 V  internal-resistance: 7 mohm }\n`
  const string = (positive: string, negative: string) =>
    `${half('a')}${half('c')}${cable('link', 'a', 'c', 'pole: series')}${plus('p', positive, 'main.controller')}${minus('n', negative, 'main.controller')}${fuse('p')}${drive}`
  it('is fed from its two ends', () => {
    const text = string('a', 'c')
    expect(found(text, 'battery/series-faulty')).toEqual([])
    expect(found(text, 'cable/pole-alone')).toEqual([])
    for (const name of ['p', 'n', 'link']) expect(figure(text, 'cable/current', name)).toBeCloseTo(100, 0)
    expect(figure(text, 'cable/voltage-drop', 'p')).toBeCloseTo(
      figure(whole, 'cable/voltage-drop', 'feed'),
      5, // The link between the two loses something too.
    )
  })

  it('is not, where a pole is at the other end', () => {
    expect(found(string('c', 'a'), 'battery/series-faulty')).toEqual([
      'A cable of the positive pole ends at this battery, which is not at that end of a + c.',
    ])
    expect(found(string('a', 'a'), 'battery/series-faulty')).toEqual([
      'A cable of the negative pole ends at this battery, which is not at that end of a + c.',
    ])
  })
})
