// Voltages and currents of a network against published examples, closed forms, and nodal analysis in fractions.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type SolvedNetwork, solveNetwork } from '../../../server/src/engineering/electrical/dc-network.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'
import { exactCurrent, exactSourceCurrent, exactVoltage, exactVoltages } from './exact-network.ts'
import { near, relative, solved, total } from './network-helpers.ts'
import { badNumbers, exactly } from './outside.ts'
import { anyNetwork, anyResistance, usualResistance } from './random-network.ts'

const source = (emf: number, resistance: number) => ({ negative: '-', positive: '+', emf, resistance })
const load = (power: number) => ({ negative: '-', positive: '+', power })

describe('a published example of nodal analysis', () => {
  it('4 V1 − 2 V2 = 15 and 2 V1 − 3.5 V2 = −20: 9.25 V and 11 V (open textbook companion, example 1.14)', () => {
    // As a network: 2 S from each of the two to the common node, or 1.5 S, and 2 S between them; 15 A and 20 A are fed in.
    const { voltages } = solved({
      links: [
        { ends: ['0', '1'], resistance: 1 / 2 },
        { ends: ['1', '2'], resistance: 1 / 2 },
        { ends: ['2', '0'], resistance: 1 / 1.5 },
      ],
      sources: [],
      draws: [
        { negative: '0', positive: '1', current: -15 },
        { negative: '0', positive: '2', current: -20 },
      ],
    })
    exactly((voltages.get('1') ?? 0) - (voltages.get('0') ?? 0), 9.25)
    exactly((voltages.get('2') ?? 0) - (voltages.get('0') ?? 0), 11)
  })
})

describe('one load of constant power behind a resistance', () => {
  const at = (emf: number, ohm: number, power: number) =>
    solveNetwork({ links: [], sources: [source(emf, ohm)], draws: [load(power)] })
  const any = fc.record({
    emf: fc.double({ min: 1, max: 1000, noNaN: true }),
    ohm: fc.double({ min: 1e-2, max: 10, noNaN: true }),
  })

  it('has the upper voltage, (E + √(E² − 4RP)) / 2, up to the limit E²/4R', () => {
    fc.assert(
      fc.property(any, fc.double({ min: -3, max: 1 - 1e-9, noNaN: true }), ({ emf, ohm }, part) => {
        const power = (part * emf ** 2) / (4 * ohm)
        const found = solved({ links: [], sources: [source(emf, ohm)], draws: [load(power)] })
        const expected = (emf + Math.sqrt(emf ** 2 - 4 * ohm * power)) / 2
        // Near the limit the voltage follows from the root of what is left.
        relative(found.drawVoltages[0], expected, part > 0.999 ? 1e-6 : 1e-11)
      }),
    )
  })

  it('has no solution above; the part that can be supplied is found', () => {
    fc.assert(
      fc.property(any, fc.double({ min: 1 + 1e-9, max: 30, noNaN: true }), ({ emf, ohm }, part) => {
        const found = at(emf, ohm, (part * emf ** 2) / (4 * ohm))
        expect(found).toMatchObject({ outcome: 'no-solution', draws: [0] })
        if (found.outcome === 'no-solution') near(found.share, 1 / part, 2e-4)
      }),
    )
  })

  it('takes no more constant current than that of a short circuit', () => {
    const draw = (current: number) =>
      solveNetwork({
        links: [],
        sources: [source(12, 0.005)],
        draws: [{ negative: '-', positive: '+', current }],
      })
    expect(draw(2399)).toMatchObject({ outcome: 'solved' })
    expect(draw(2401)).toMatchObject({ outcome: 'no-solution', draws: [0] })
  })
})

describe('no solution', () => {
  it('names the load that is too far away, not the one beside the bank', () => {
    const found = solveNetwork({
      links: [
        { ends: ['+', 'far +'], resistance: 0.5 },
        { ends: ['-', 'far -'], resistance: 0.5 },
      ],
      sources: [source(48, 0.005)],
      draws: [load(5000), { negative: 'far -', positive: 'far +', power: 1000 }],
    })
    expect(found).toMatchObject({ outcome: 'no-solution', draws: [1] })
  })

  it('names both of two that are alike, and in each island its own', () => {
    const island = (name: string) => ({ negative: `${name} -`, positive: `${name} +` })
    const found = solveNetwork({
      links: [],
      sources: ['a', 'b', 'c'].map((name) => ({ ...island(name), emf: 12, resistance: 0.1 })),
      draws: [
        { ...island('a'), power: 200 },
        { ...island('b'), power: 200 },
        { ...island('c'), power: 400 },
        { ...island('a'), power: 200 },
      ],
    })
    // 12² / 0.4 = 360 W at most from each.
    expect(found).toMatchObject({ outcome: 'no-solution', draws: [0, 2, 3] })
    if (found.outcome === 'no-solution') near(found.share, 0.9, 2e-4)
  })
})

describe('what no source reaches', () => {
  it('is named, and the rest is solved', () => {
    const found = solved({
      links: [{ ends: ['x +', 'x +'], resistance: 1 }],
      sources: [source(12, 0.1)],
      draws: [
        load(100),
        { negative: 'y -', positive: 'y +', power: 50 },
        { negative: 'y -', positive: '+', power: 50 },
        { negative: '+', positive: '+', power: 50 },
        { negative: 'y -', positive: 'y +', current: -5 },
      ],
    })
    expect(found.unfed).toEqual([1, 2, 3, 4])
    expect(found.drawCurrents.slice(1)).toEqual([0, 0, 0, 0])
    relative(found.drawVoltages[0], (12 + Math.sqrt(144 - 40)) / 2, 1e-12)
  })

  it('nor is a load between poles that 0 Ω joins, and the source is named', () => {
    const found = solved({
      links: [{ ends: ['+', '-'], resistance: 0 }],
      sources: [source(12, 0.005)],
      draws: [load(100)],
    })
    expect(found).toMatchObject({ unfed: [0], shorted: [0], sourceCurrents: [2400], linkCurrents: [2400] })
  })

  it('a load with exchanged poles has a negative voltage', () => {
    const found = solved({
      links: [],
      sources: [source(100, 0.1)],
      draws: [{ negative: '+', positive: '-', power: 9000 }],
    })
    relative(found.drawVoltages[0], -90, 1e-12)
    relative(found.sourceCurrents[0], 100, 1e-12)
  })

  it('an empty network is solved', () => {
    expect(solved({ links: [], sources: [], draws: [] }).voltages.size).toBe(0)
  })
})

it('two banks of unequal voltage side by side: the higher charges the lower', () => {
  // 102 V and 98 V with 20 mΩ each: 4 V over 40 mΩ.
  const found = solved({ links: [], sources: [source(102, 0.02), source(98, 0.02)], draws: [] })
  relative(found.sourceCurrents[0], 100, 1e-12)
  relative(found.sourceCurrents[1], -100, 1e-12)
})

it('places joined by 0 Ω: currents follow from Kirchhoff, and like links side by side share', () => {
  const found = solved({
    links: [
      { ends: ['+', 'bus'], resistance: 0 },
      { ends: ['bus', 'feed'], resistance: 0 },
      { ends: ['feed', 'bus'], resistance: 0 },
    ],
    sources: [source(100, 0.1)],
    draws: [
      { negative: '-', positive: 'feed', current: 60 },
      { negative: '-', positive: 'bus', current: 40 },
    ],
  })
  found.linkCurrents.forEach((amps, i) => {
    near(amps, [100, 30, -30][i] ?? 0, 1e-9)
  })
})

describe('resistances from 1 µΩ to 1 kΩ', () => {
  it('give what nodal analysis in fractions gives', () => {
    fc.assert(
      fc.property(anyNetwork(anyResistance), (network) => {
        const exact = exactVoltages(network)
        const found = solved(network)
        const highest = Math.max(
          1,
          ...[...found.voltages.values()].map(Math.abs),
          ...network.sources.map((s) => s.emf),
        )
        // A voltage is a double: what it leaves out, over the resistance, is what a current may be off. What rounding leaves over of the currents
        // between the sources, which may be of megaamperes here, flows on as well.
        const loop = total(network.sources.map((one) => one.emf / one.resistance))
        const off = (amps: number, ohm: number) =>
          1e-10 * Math.abs(amps) + (2e-15 * highest) / ohm + 1e-14 * loop
        const ohms = total([...network.links, ...network.sources].map(({ resistance }) => resistance))
        network.links.forEach((link, i) => {
          if (link.ends[0] === link.ends[1]) return
          const amps = exactCurrent(exact, link)
          near(found.linkCurrents[i], amps, off(amps, link.resistance))
        })
        network.sources.forEach((one, i) => {
          const amps = exactSourceCurrent(exact, one)
          near(found.sourceCurrents[i], amps, off(amps, one.resistance))
        })
        network.draws.forEach(({ positive, negative }, i) => {
          const volts = exactVoltage(exact, positive, negative)
          near(found.drawVoltages[i], volts, 1e-12 * highest + 1e-14 * loop * ohms)
        })
      }),
      { numRuns: 300 },
    )
  })
})

describe('constant currents', () => {
  it('superpose, and each acts on the other as the other on it', () => {
    fc.assert(
      fc.property(anyNetwork(usualResistance), fc.nat({ max: 1 }), fc.nat({ max: 1 }), (network, i, j) => {
        const none = { ...network, draws: [] }
        const dead = { ...none, sources: none.sources.map((one) => ({ ...one, emf: 0 })) }
        const at = (places: number) => ({ negative: `${places}`, positive: `${1 - places}`, current: -1 })
        const voltage = (found: SolvedNetwork, place: number) =>
          (found.voltages.get(`${1 - place}`) ?? 0) - (found.voltages.get(`${place}`) ?? 0)
        const alone = [i, j].map((place) => solved({ ...dead, draws: [at(place)] })) as [
          SolvedNetwork,
          SolvedNetwork,
        ]
        near(voltage(alone[0], j), voltage(alone[1], i), 1e-12)
        const open = solved(none)
        const all = solved({ ...none, draws: [at(i), at(j)] })
        for (const place of [0, 1])
          near(
            voltage(all, place),
            voltage(open, place) + voltage(alone[0], place) + voltage(alone[1], place),
            1e-9,
          )
      }),
    )
  })
})

it('refuses what is no resistance, voltage, power or current', () => {
  const network = { links: [], sources: [source(12, 0.1)], draws: [load(1)] }
  for (const bad of badNumbers) {
    if (bad !== 0)
      expect(() => solveNetwork({ ...network, links: [{ ends: ['+', 'a'], resistance: bad }] })).toThrow(
        OutOfRange,
      )
    expect(() => solveNetwork({ ...network, sources: [source(12, bad)] })).toThrow(OutOfRange)
    if (Math.abs(bad) > 1) {
      expect(() => solveNetwork({ ...network, sources: [source(bad, 1)] })).toThrow(OutOfRange)
      expect(() => solveNetwork({ ...network, draws: [load(bad)] })).toThrow(OutOfRange)
    }
  }
})
