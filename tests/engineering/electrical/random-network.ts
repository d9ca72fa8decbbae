import fc from 'fast-check'
import type { DcNetwork, NetworkDraw } from '../../../server/src/engineering/electrical/dc-network.ts'

/** From 1 µΩ to 1 kΩ, each decade as often, in whole µΩ so that fractions are exact. */
export const anyResistance = fc
  .double({ min: 0, max: 9, noNaN: true })
  .map((decade) => Math.round(10 ** decade) / 1e6)

/** Of cables and batteries: 50 µΩ to 50 mΩ. */
export const usualResistance = fc.integer({ min: 50, max: 50_000 }).map((micro) => micro / 1e6)

/** A network that hangs together, with draws of constant current, its resistances of any of the given. */
export const anyNetwork = (resistance: fc.Arbitrary<number>): fc.Arbitrary<DcNetwork> =>
  fc.integer({ min: 2, max: 7 }).chain((count) => {
    const place = fc.nat({ max: count - 1 })
    const pair = fc.tuple(place, fc.integer({ min: 1, max: count - 1 })).map(([a, step]) => {
      const [one, other] = [`${a}`, `${(a + step) % count}`]
      return [one, other] as const
    })
    const tree = fc.tuple(
      ...Array.from({ length: count - 1 }, (_, i) =>
        fc.record({
          ends: fc.nat({ max: i }).map((before) => [`${before}`, `${i + 1}`] as const),
          resistance,
        }),
      ),
    )
    const loops = fc.array(fc.record({ ends: pair, resistance }), { maxLength: 5 })
    const sources = fc.array(
      fc
        .record({ poles: pair, milli: fc.integer({ min: 0, max: 120_000 }), resistance })
        .map(({ poles: [negative, positive], milli, resistance: ohm }) => ({
          negative,
          positive,
          emf: milli / 1e3,
          resistance: ohm,
        })),
      { minLength: 1, maxLength: 4 },
    )
    const draws = fc.array(
      fc
        .record({ poles: pair, milli: fc.integer({ min: 0, max: 500_000 }) })
        .map(({ poles: [negative, positive], milli }) => ({ negative, positive, current: -milli / 1e3 })),
      { maxLength: 3 },
    )
    return fc
      .record({ tree, loops, sources, draws })
      .map(({ tree: spanning, loops: more, ...rest }) => ({ links: [...spanning, ...more], ...rest }))
  })

/** A boat: banks with a resistance of their own on buses, loads of constant power at the ends of cables of two poles, all one way round. */
export const anyBoat: fc.Arbitrary<DcNetwork> = fc
  .record({
    banks: fc.array(fc.record({ emf: fc.integer({ min: 90, max: 110 }), resistance: usualResistance }), {
      minLength: 1,
      maxLength: 3,
    }),
    ties: fc.array(fc.tuple(usualResistance, usualResistance), { minLength: 3, maxLength: 3 }),
    feeds: fc.array(
      fc.record({
        /** The bus, or a load before: the cable goes on from there. */
        from: fc.nat(),
        plus: usualResistance,
        minus: usualResistance,
        power: fc.integer({ min: 1, max: 15_000 }),
      }),
      { minLength: 1, maxLength: 6 },
    ),
  })
  .map(({ banks, ties, feeds }) => {
    const links = banks.flatMap((_, i) => [
      { ends: [`bank ${i} +`, 'bus +'] as const, resistance: ties[i]?.[0] ?? 0 },
      { ends: [`bank ${i} -`, 'bus -'] as const, resistance: ties[i]?.[1] ?? 0 },
    ])
    const at = (i: number, from: number) => (from % (i + 1) === i ? 'bus' : `load ${from % (i + 1)}`)
    return {
      sources: banks.map((bank, i) => ({ ...bank, negative: `bank ${i} -`, positive: `bank ${i} +` })),
      links: [
        ...links,
        ...feeds.flatMap(({ from, plus, minus }, i) => [
          { ends: [`${at(i, from)} +`, `load ${i} +`] as const, resistance: plus },
          { ends: [`${at(i, from)} -`, `load ${i} -`] as const, resistance: minus },
        ]),
      ],
      draws: feeds.map(
        ({ power }, i): NetworkDraw => ({
          negative: `load ${i} -`,
          positive: `load ${i} +`,
          power,
        }),
      ),
    }
  })
