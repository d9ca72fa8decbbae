// Banks and loads of constant power: against dense nodal analysis, and what holds in every network.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type DcNetwork,
  type SolvedNetwork,
  solveNetwork,
} from '../../../server/src/engineering/electrical/dc-network.ts'
import { denseVoltages } from './dense-network.ts'
import { near, relative, solved, total } from './network-helpers.ts'
import { anyBoat } from './random-network.ts'

/** The sums of currents at each place, A. */
function sums({ links, sources, draws }: DcNetwork, found: SolvedNetwork): number[] {
  const at = new Map<string, number>()
  const move = (from: string, to: string, amps = 0) => {
    at.set(from, (at.get(from) ?? 0) - amps)
    at.set(to, (at.get(to) ?? 0) + amps)
  }
  for (const [i, { ends }] of links.entries()) move(...ends, found.linkCurrents[i])
  for (const [i, { negative, positive }] of sources.entries())
    move(negative, positive, found.sourceCurrents[i])
  for (const [i, { negative, positive }] of draws.entries()) move(positive, negative, found.drawCurrents[i])
  return [...at.values()]
}

/** Boats whose loads can be supplied. */
const anySupplied = anyBoat.filter((boat) => solveNetwork(boat).outcome === 'solved')

describe('banks and loads of constant power', () => {
  it('agree with dense nodal analysis, iterated from the voltages with no load', () => {
    fc.assert(
      fc.property(anyBoat, (boat) => {
        const dense = denseVoltages(boat)
        const found = solveNetwork(boat)
        expect(found.outcome).toBe(dense ? 'solved' : 'no-solution')
        if (found.outcome !== 'solved' || !dense) return
        for (const [i, volts] of dense.entries()) relative(found.drawVoltages[i], volts, 1e-6)
      }),
    )
  })

  it('add up to zero at each place, some links joined by 0 Ω', () => {
    fc.assert(
      fc.property(anySupplied, fc.nat({ max: 6 }), (boat, every) => {
        const links = boat.links.map((link, i) => (i % 7 === every ? { ...link, resistance: 0 } : link))
        const joined = { ...boat, links }
        const most = Math.max(...solved(joined).sourceCurrents.map(Math.abs), 1)
        for (const sum of sums(joined, solved(joined))) near(sum, 0, 1e-9 * most)
      }),
    )
  })

  it('take what the sources give, less what becomes heat', () => {
    fc.assert(
      fc.property(anySupplied, (boat) => {
        const found = solved(boat)
        const given = total(boat.sources.map(({ emf }, i) => emf * (found.sourceCurrents[i] ?? 0)))
        const heat =
          total(boat.sources.map(({ resistance }, i) => resistance * (found.sourceCurrents[i] ?? 0) ** 2)) +
          total(boat.links.map(({ resistance }, i) => resistance * (found.linkCurrents[i] ?? 0) ** 2))
        near(given - heat, total(boat.draws.map(({ power }) => power ?? 0)), 1e-9 * given + 1e-5)
        boat.draws.forEach(({ power = 0 }, i) => {
          relative((found.drawVoltages[i] ?? 0) * (found.drawCurrents[i] ?? 0), power, 1e-9)
        })
      }),
    )
  })

  it('never have more voltage at any load where one load takes more, or one cable is longer', () => {
    // True here because no load lifts the voltage of another: all are between the same two poles.
    fc.assert(
      fc.property(anySupplied, fc.nat(), fc.double({ min: 1, max: 2, noNaN: true }), (boat, which, more) => {
        const before = solved(boat).drawVoltages
        const worse = [
          {
            ...boat,
            draws: boat.draws.map((draw, i) =>
              i === which % boat.draws.length ? { ...draw, power: (draw.power ?? 0) * more } : draw,
            ),
          },
          // Cables to loads; those to banks come first. What binds a bank of lower voltage to the bus can be a help in its resistance.
          {
            ...boat,
            links: boat.links.map((link, i) =>
              i >= 2 * boat.sources.length &&
              i === 2 * boat.sources.length + (which % (2 * boat.draws.length))
                ? { ...link, resistance: link.resistance * more }
                : link,
            ),
          },
        ]
        for (const network of worse) {
          const after = solveNetwork(network)
          if (after.outcome === 'solved')
            for (const [i, volts] of after.drawVoltages.entries())
              expect(volts).toBeLessThanOrEqual((before[i] ?? 0) * (1 + 1e-9))
        }
      }),
    )
  })

  it('are the same with both poles exchanged, voltages and powers scaled, or written in another order', () => {
    fc.assert(
      fc.property(anySupplied, fc.double({ min: 0.01, max: 100, noNaN: true }), (boat, scale) => {
        const found = solved(boat)
        const exchanged = <T extends { negative: string; positive: string }>(one: T): T => ({
          ...one,
          negative: one.positive,
          positive: one.negative,
        })
        const mirrored = solved({
          ...boat,
          sources: boat.sources.map(exchanged),
          draws: boat.draws.map(exchanged),
        })
        const scaled = solved({
          ...boat,
          sources: boat.sources.map((one) => ({ ...one, emf: one.emf * scale })),
          draws: boat.draws.map((one) => ({ ...one, power: (one.power ?? 0) * scale ** 2 })),
        })
        const turned = solved({
          links: boat.links.toReversed(),
          sources: boat.sources.toReversed(),
          draws: boat.draws.toReversed(),
        })
        found.drawVoltages.forEach((volts, i) => {
          relative(mirrored.drawVoltages[i], volts, 1e-9)
          relative(scaled.drawVoltages[i], volts * scale, 1e-9)
          relative(turned.drawVoltages.toReversed()[i], volts, 1e-9)
        })
      }),
    )
  })

  it('leave other islands as they are', () => {
    fc.assert(
      fc.property(anySupplied, anySupplied, (one, other) => {
        const away = (name: string) => `${name} of the other`
        const far = {
          links: other.links.map(({ ends: [a, b], resistance }) => ({
            ends: [away(a), away(b)] as const,
            resistance,
          })),
          sources: other.sources.map((s) => ({
            ...s,
            negative: away(s.negative),
            positive: away(s.positive),
          })),
          draws: other.draws.map((d) => ({ ...d, negative: away(d.negative), positive: away(d.positive) })),
        }
        const both = solved({
          links: [...one.links, ...far.links],
          sources: [...one.sources, ...far.sources],
          draws: [...one.draws, ...far.draws],
        })
        const each = [...solved(one).drawVoltages, ...solved(other).drawVoltages]
        for (const [i, volts] of both.drawVoltages.entries()) relative(volts, each[i] ?? 0, 1e-9)
      }),
    )
  })
})
