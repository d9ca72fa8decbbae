// Fault currents of batteries and networks, against published examples and nodal analysis in fractions.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type DcNetwork,
  faultCurrents,
  faultFlow,
} from '../../../server/src/engineering/electrical/dc-network.ts'
import { exactVoltage, exactVoltages } from './exact-network.ts'
import { near, relative, solved, total } from './network-helpers.ts'
import { asPrinted, exactly } from './outside.ts'
import { anyBoat, anyNetwork, anyResistance } from './random-network.ts'

const source = (negative: string, positive: string, emf: number, resistance: number) => ({
  negative,
  positive,
  emf,
  resistance,
})
const fault = (network: Pick<DcNetwork, 'links' | 'sources'>, from: string, to: string): number =>
  faultCurrents(network, [[from, to]])[0] ?? Number.NaN

describe('published and computed examples', () => {
  it('12 V, 5 mΩ: 2 400 A (battery fault tutorial)', () => {
    exactly(fault({ links: [], sources: [source('-', '+', 12, 0.005)] }, '+', '-'), 2400)
  })

  it('four cells of 0.75 mΩ and three jumpers of 0.25 mΩ, 14 V: 14 / 0.00375; one cell 3.5 V: 4 667 A (off-road electrical forum)', () => {
    const cells = [0, 1, 2, 3].map((i) => source(`${i} -`, `${i} +`, 3.5, 0.00075))
    const links = [0, 1, 2].map((i) => ({ ends: [`${i} +`, `${i + 1} -`] as const, resistance: 0.00025 }))
    exactly(fault({ links, sources: cells }, '3 +', '0 -'), 14 / 0.00375)
    asPrinted(fault({ links, sources: cells }, '0 +', '0 -'), '4667')
  })

  it('six 6 V units of 2 400 A each, two in series, three strings: 7 200 A (ABYC-based interrupting-capacity note)', () => {
    const sources = [0, 1, 2].flatMap((string) => [
      source('-', `middle ${string}`, 6, 6 / 2400),
      source(`middle ${string}`, '+', 6, 6 / 2400),
    ])
    exactly(fault({ links: [], sources }, '+', '-'), 7200)
  })

  it('two banks of 108 V and 14 mΩ, a link of 0.6 mΩ: 15.11 kA at the first', () => {
    const network = {
      links: [
        { ends: ['a +', 'b +'] as const, resistance: 0.0006 },
        { ends: ['a -', 'b -'] as const, resistance: 0 },
      ],
      sources: [source('a -', 'a +', 108, 0.014), source('b -', 'b +', 108, 0.014)],
    }
    exactly(fault(network, 'a +', 'a -'), 108 / 0.014 + 108 / 0.0146)
    asPrinted(fault(network, 'a +', 'a -') / 1000, '15.11')
    const flow = faultFlow(network, ['a +', 'a -'])
    exactly(flow.sourceCurrents[0] ?? 0, 108 / 0.014)
    exactly(flow.sourceCurrents[1] ?? 0, 108 / 0.0146)
    exactly(-(flow.linkCurrents[0] ?? 0), 108 / 0.0146)
    exactly(flow.linkCurrents[1] ?? 0, 108 / 0.0146)
  })
})

describe('a fault', () => {
  it('has no current where no source drives one', () => {
    const network = {
      links: [{ ends: ['x', 'y'] as const, resistance: 0.1 }],
      sources: [source('-', '+', 12, 0.005)],
    }
    const none = faultCurrents(network, [
      ['x', 'y'],
      ['x', '+'],
      ['+', 'unknown'],
      ['+', '+'],
      ['unknown', 'nowhere'],
    ])
    expect(none).toEqual([0, 0, 0, 0, 0])
    for (const places of [
      ['x', 'y'],
      ['x', '+'],
      ['+', 'unknown'],
    ] as const)
      expect(faultFlow(network, places)).toEqual({ current: 0, linkCurrents: [0], sourceCurrents: [0] })
  })

  it('beside a short circuit that is there already takes its part', () => {
    const network = {
      links: [{ ends: ['+', '-'] as const, resistance: 0 }],
      sources: [source('-', '+', 12, 0.005)],
    }
    exactly(fault(network, '+', '-'), 1200)
  })

  it('is that of the network solved with the two places as one, from 1 µΩ to 1 kΩ', () => {
    fc.assert(
      fc.property(anyNetwork(anyResistance), ({ links, sources }) => {
        const network = { links, sources }
        const amps = fault(network, '0', '1')
        const short = { ends: ['0', '1'] as const, resistance: 0 }
        const flow = solved({ links: [...links, short], sources, draws: [] })
        const most = Math.max(1, ...flow.sourceCurrents.map(Math.abs))
        // A part of a voltage of 120 V that rounding leaves out, over 1 µΩ.
        near(amps, flow.linkCurrents.at(-1) ?? 0, 1e-8 * most + 1e-6)
        const found = faultFlow(network, ['0', '1'])
        near(found.current, flow.linkCurrents.at(-1) ?? 0, 1e-9 * most)
        for (const [i, one] of found.sourceCurrents.entries())
          near(one, flow.sourceCurrents[i] ?? 0, 1e-9 * most)
      }),
    )
  })

  it('has the current of voltage over resistance, both from fractions', () => {
    fc.assert(
      fc.property(anyNetwork(anyResistance), ({ links, sources }) => {
        const open = exactVoltage(exactVoltages({ links, sources, draws: [] }), '0', '1')
        const dead = sources.map((one) => ({ ...one, emf: 0 }))
        const probe = [{ negative: '1', positive: '0', current: -1 }]
        const ohm = exactVoltage(exactVoltages({ links, sources: dead, draws: probe }), '0', '1')
        const amps = fault({ links, sources }, '0', '1')
        const highest = Math.max(1, ...sources.map(({ emf }) => emf))
        // What rounding leaves over of the currents between the sources, which may be of megaamperes here, flows on as well.
        const loop = total(sources.map((one) => one.emf / one.resistance))
        near(amps, open / ohm, 1e-9 * Math.abs(open / ohm) + (1e-12 * highest) / ohm + 1e-14 * loop)
      }),
      { numRuns: 300 },
    )
  })

  it('never grows with a longer cable nor falls with one more bank of the same voltage', () => {
    // Between the poles of a bus all sources of one voltage act the same way; with unequal voltages a longer cable to a low bank can be either.
    fc.assert(
      fc.property(anyBoat, fc.nat(), fc.double({ min: 1, max: 10, noNaN: true }), (boat, which, more) => {
        const sources = boat.sources.map((one) => ({ ...one, emf: 100 }))
        const before = fault({ ...boat, sources }, 'load 0 +', 'load 0 -')
        const links = boat.links.map((link, i) =>
          i === which % boat.links.length ? { ...link, resistance: link.resistance * more } : link,
        )
        expect(fault({ links, sources }, 'load 0 +', 'load 0 -')).toBeLessThanOrEqual(before * (1 + 1e-9))
        const another = [...sources, source('bus -', 'bus +', 100, 0.01)]
        expect(fault({ ...boat, sources: another }, 'load 0 +', 'load 0 -')).toBeGreaterThanOrEqual(
          before * (1 - 1e-9),
        )
      }),
    )
  })

  it('is the same from the other side, with the opposite sign', () => {
    fc.assert(
      fc.property(anyBoat, (boat) => {
        relative(fault(boat, 'load 0 -', 'load 0 +'), -fault(boat, 'load 0 +', 'load 0 -'), 1e-9)
      }),
    )
  })
})
