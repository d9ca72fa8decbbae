// The network of a job in its cases: which drives are on, which batteries, at which torque, and charging. Against the current divider, Ohm's law and the
// quadratic equation of a constant power behind a resistance, written out here.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cableCurrent } from '../../../server/src/areas/electrical/plans/design-current.ts'
import {
  allCaseFlows,
  type CaseKind,
  caseFlows,
} from '../../../server/src/areas/electrical/plans/load-cases.ts'
import { blockIn } from '../job-text.ts'
import { loopAt105, withDrop } from './with-drop.ts'

const volts = 84
const bank = (name: string, milliohm: number | 'unknown' = 14, more = '') =>
  `battery ${name} { nominal: 96 V  window: ${volts}..108 V  ${milliohm === 'unknown' ? '' : `internal-resistance: ${milliohm} mohm`}  ${more} }\n`
const cable = (name: string, from: string, to: string, length = 2) =>
  `cable ${name} { from: ${from}  to: ${to}  conductor: 95 mm2  length: ${length} m  insulation: 105 degC  place: open }\n`
const load = (name: string, watts: number) => `load ${name} { power: ${watts} W }\n`
const drive = (name: string, from: string, motor = 'power: 9 kW', controller = '') =>
  `drive ${name} {\nmotor m { ${motor}  efficiency: 90 % }\ncontroller c { efficiency: 95 %  ${controller} }\n${cable('feed', from, 'c')}}\n`

/** IEC 60228:2004 class 5 tinned, 95 mm²: 0.210 Ω/km at 20 °C. */
const ohm = (length: number) => length * loopAt105(0.21)

const ampsOf = (text: string, name: string, kind: CaseKind, at = 0): number => {
  const { block, lookup } = blockIn(text, name)
  return caseFlows(kind, block, lookup)[at]?.amps ?? Number.NaN
}
const designCurrentOf = (text: string, name: string) => {
  const { block, lookup } = blockIn(text, name)
  const outcome = cableCurrent(block, lookup)
  return outcome.ok ? outcome.value : undefined
}

describe('batteries that a cable links', () => {
  const linked = (other: number | 'unknown', length = 3) =>
    bank('b') + bank('s', other) + cable('link', 's', 'b', length) + load('l', 9000) + cable('f', 'b', 'l')
  const taken = withDrop(9000, volts, ohm(2))

  it('share a load as a current divider, the weaker one at the low end of its window', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 60 }), fc.integer({ min: 1, max: 12 }), (milliohm, length) => {
        const [own, other] = [0.014, milliohm * 1e-3 + ohm(length)]
        const text = linked(milliohm, length)
        const through = ampsOf(text, 'link', 'rated')
        const [near, far] = [ampsOf(text, 'b', 'rated'), ampsOf(text, 's', 'rated')]
        expect(far).toBeCloseTo(through, 4)
        expect(through / near).toBeCloseTo(own / other, 4)
        // The far one may be the weaker: at its terminals it has the low end, the load less by what the link loses.
        const farIsWeaker = far * milliohm * 1e-3 > near * own
        const busbar = farIsWeaker ? volts - ohm(length) * far : volts
        expect(near + far).toBeCloseTo(withDrop(9000, busbar, ohm(2)), 1)
      }),
      { numRuns: 40 },
    )
  })

  it('have the weakest at the low end of its window, however much is lost inside', () => {
    for (const watts of [9000, 60_000, 100_000]) {
      const text = linked(14, 3).replaceAll('14 mohm', '40 mohm').replace('9000 W', `${watts} W`)
      // 84 V at the load's battery, and the other a little less loaded behind the link.
      const all = withDrop(watts, volts, ohm(2))
      const far = (all * 0.04) / (0.08 + ohm(3))
      expect(ampsOf(text, 's', 'rated') / far).toBeCloseTo(1, 5)
      expect(ampsOf(text, 'b', 'rated') / (all - far)).toBeCloseTo(1, 5)
    }
  })

  it('charge as a current divider', () => {
    const text = `${linked(20)}charger sh { current: 40 A  output: 84..108 V }\n${cable('c', 'sh', 'b')}`
    const share = 0.014 / (0.014 + 0.02 + ohm(3))
    expect(ampsOf(text, 's', 'charging')).toBeCloseTo(-40 * share, 4)
    expect(ampsOf(text, 'b', 'charging')).toBeCloseTo(-40 * (1 - share), 4)
    expect(ampsOf(text, 'link', 'charging')).toBeCloseTo(40 * share, 4)
    expect(ampsOf(text, 'c', 'charging')).toBeCloseTo(40, 4)
    expect(ampsOf(text, 'f', 'charging')).toBeCloseTo(0, 6)
  })

  it('let all flow through the link while the one at the load is off', () => {
    const all = withDrop(9000, volts, ohm(2) + ohm(3))
    expect(ampsOf(linked(20), 'link', 'off')).toBeCloseTo(all, 5)
    expect(designCurrentOf(linked(20), 'link')?.current).toBeCloseTo(all, 5)
    expect(designCurrentOf(linked(20), 'link')?.currentFrom).toContain('b off')
  })

  it('of which neither may give enough alone are looked at together only', () => {
    const text = linked(20).replaceAll('window', 'current: 60 A  window')
    expect(ampsOf(text, 'link', 'off')).toBeNaN()
    expect(designCurrentOf(text, 'link')?.current).toBeCloseTo(ampsOf(text, 'link', 'rated'), 6)
  })

  it('share as their cables let them where one does not state its resistance, and say so', () => {
    const text = linked('unknown')
    expect(ampsOf(text, 'b', 'rated')).toBeCloseTo(taken, 5)
    const { block, lookup } = blockIn(text, 'link')
    expect(caseFlows('rated', block, lookup)[0]?.isSharedByCables).toBe(true)
    expect(designCurrentOf(text, 'link')?.assumptions.join()).toContain(
      'not each states its internal resistance',
    )
  })
})

describe('of two drives', () => {
  const watts = 9000 / 0.9 / 0.95
  const two = (more = '') =>
    bank('b') + bank('s') + cable('link', 's', 'b', 3) + drive('port', 'b') + drive('starboard', 's') + more

  it('each is looked at alone, with the loads that belong to none: the link then carries more than with both', () => {
    const alone = ampsOf(two(), 'link', 'alone')
    const one = withDrop(watts, volts, ohm(2))
    expect(alone).toBeCloseTo((one * 0.014) / (0.028 + ohm(3)), 4)
    expect(ampsOf(two(), 'link', 'rated')).toBeCloseTo(0, 4)
    expect(designCurrentOf(two(), 'link')?.current).toBeGreaterThanOrEqual(alone)
    const hotel = two(load('l', 2000) + cable('h', 'b', 'l'))
    expect(ampsOf(hotel, 'h', 'alone', 1)).toBeGreaterThan(2000 / 85)
    expect(ampsOf(hotel, 'port.feed', 'alone', 1)).toBeCloseTo(0, 6)
  })

  it('none is looked at alone where there is one, or where there are many', () => {
    expect(ampsOf(bank('b') + drive('port', 'b'), 'b', 'alone')).toBeNaN()
    const many = ['p', 'q', 'r', 's', 't'].map((name) => drive(name, 'b')).join('')
    expect(ampsOf(bank('b') + many, 'b', 'alone')).toBeNaN()
    expect(ampsOf(bank('b') + many, 'b', 'rated')).toBeGreaterThan(5 * 100)
  })
})

describe('at peak torque', () => {
  const peaking = (controller = '') =>
    bank('b') +
    drive('port', 'b', 'power: 9 kW  speed: 1500 rpm  peak-torque: 100 N·m  peak-time: 30 s', controller)
  // P = M ω, with 1500 rpm = 157.08 rad/s.
  const shaft = 100 * 1500 * (Math.PI / 30)

  it('a motor takes torque times speed, through both efficiencies', () => {
    expect(ampsOf(peaking(), 'b', 'peak')).toBeCloseTo(withDrop(shaft / 0.9 / 0.95, volts, ohm(2)), 4)
  })

  it('the limit of the controller caps it, and the shorter time counts', () => {
    expect(ampsOf(peaking('input-current-limit: 150 A'), 'b', 'peak')).toBeCloseTo(150, 4)
    const { block, lookup } = blockIn(peaking('peak-time: 10 s'), 'b')
    expect(caseFlows('peak', block, lookup)[0]?.lasts).toBe(10)
  })

  it('is no case where no motor states it', () => {
    expect(ampsOf(bank('b') + drive('port', 'b'), 'b', 'peak')).toBeNaN()
  })
})

it('in every case what batteries give is what is taken: Kirchhoff', () => {
  const watts = fc.integer({ min: 100, max: 6000 })
  fc.assert(
    fc.property(watts, watts, fc.integer({ min: 1, max: 9 }), (one, other, length) => {
      const text =
        bank('b') +
        bank('s', 30) +
        'busbar bus { }\n' +
        cable('lb', 'b', 'bus', length) +
        cable('ls', 's', 'bus') +
        load('l', one) +
        load('k', other) +
        cable('f', 'bus', 'l') +
        cable('g', 'bus', 'k', length)
      const flowsOf = (name: string) => {
        const { block, lookup } = blockIn(text, name)
        return new Map(allCaseFlows(block, lookup).map((flow) => [flow.name, flow]))
      }
      const [b, s, lb, f, g, l] = ['b', 's', 'lb', 'f', 'g', 'l'].map(flowsOf)
      for (const name of f?.keys() ?? []) {
        const amps = (of: typeof b) => of?.get(name)?.amps ?? 0
        expect(amps(b) + amps(s)).toBeCloseTo(amps(f) + amps(g), 4)
        expect(Math.abs(amps(b))).toBeCloseTo(amps(lb), 4)
        expect((l?.get(name)?.volts ?? 0) * amps(f)).toBeCloseTo(one, 2)
      }
    }),
    { numRuns: 30 },
  )
})
