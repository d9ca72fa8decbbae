import { inRange, positive } from '../guard.ts'
import {
  branchCurrent,
  operatingPoint,
  type Port,
  portCurrent,
  seenFrom,
  voltageBetween,
} from './dc-island.ts'
import { type Wire, type Wiring, wiringOf } from './dc-wiring.ts'
import { eliminationOf, reduce, voltagesOf } from './star-mesh.ts'

/** A conductor or a closed device between two places. */
export interface NetworkLink {
  readonly ends: readonly [string, string]
  /** Ω, ≥ 0; 0 joins the two. */
  readonly resistance: number
}

/** A battery or another source of constant voltage behind its resistance. */
export interface NetworkSource {
  readonly negative: string
  readonly positive: string
  /** V */
  readonly emf: number
  /** Ω, > 0 */
  readonly resistance: number
}

/** What is connected between two places. Power and current add up; negative ones feed in. */
export interface NetworkDraw {
  readonly negative: string
  readonly positive: string
  /** W, whatever the voltage is. */
  readonly power?: number
  /** A, whatever the voltage is. */
  readonly current?: number
}

/** Both poles are places of their own: a cable of two poles is two links. */
export interface DcNetwork {
  readonly links: readonly NetworkLink[]
  readonly sources: readonly NetworkSource[]
  readonly draws: readonly NetworkDraw[]
}

interface Said {
  /** Draws between whose poles no source makes a voltage: they have no current. One that feeds in a constant current needs only a way for it.
   * Indices. */
  readonly unfed: readonly number[]
  /** Sources whose poles are joined by links of 0 Ω. Indices. */
  readonly shorted: readonly number[]
}

export interface SolvedNetwork extends Said {
  readonly outcome: 'solved'
  /** V, against the negative pole of the first source that is connected with the place; 0 where there is none. */
  readonly voltages: ReadonlyMap<string, number>
  /** A, from the first end to the second. */
  readonly linkCurrents: readonly number[]
  /** A, out of the positive pole; negative while charging. */
  readonly sourceCurrents: readonly number[]
  /** V, from the positive to the negative pole: below zero where the poles are exchanged. */
  readonly drawVoltages: readonly number[]
  /** A, into the positive pole. */
  readonly drawCurrents: readonly number[]
}

export interface UnsolvedNetwork extends Said {
  readonly outcome: 'no-solution'
  /** The draws that ask for more than can reach them: indices. */
  readonly draws: readonly number[]
  /** What part of all that is asked for there can be supplied, at most, to about 1e-4. */
  readonly share: number
}

export type NetworkSolution = SolvedNetwork | UnsolvedNetwork

/** The currents in a fault. */
export interface FaultFlow {
  /** A, from the first place to the second. */
  readonly current: number
  /** A, from the first end to the second. */
  readonly linkCurrents: readonly number[]
  /** A, out of the positive pole. */
  readonly sourceCurrents: readonly number[]
}

type Passive = Pick<DcNetwork, 'links' | 'sources'>

/** Sources first: voltages are against the negative pole of the first. */
function wiresOf({ links, sources }: Passive): Wire[] {
  for (const { resistance } of links) if (resistance !== 0) positive('resistance of a link', resistance)
  for (const { emf, resistance } of sources) {
    if (emf !== 0) positive('voltage of a source', Math.abs(emf))
    positive('resistance of a source', resistance)
  }
  return [
    ...sources.map(({ negative, positive: plus, emf, resistance }) => ({
      ends: [negative, plus] as const,
      emf,
      resistance,
    })),
    ...links.map(({ ends, resistance }) => ({ ends, emf: 0, resistance })),
  ]
}

const at = (numbers: readonly number[] | undefined, i: number): number => numbers?.[i] ?? 0

/** Where a voltage counts as none, as a part of the highest voltage of a source. */
const noVoltage = 1e-9

/** A draw as a port of its island. */
interface Connected {
  readonly island: number
  readonly port: Port
  readonly fed: boolean
}

/** Where a draw is connected; nowhere if its poles are in two islands. */
function connected(
  wiring: Wiring,
  { negative, positive: plus, power = 0, current = 0 }: NetworkDraw,
): Connected | undefined {
  inRange('power of a draw', power, -1e9, 1e9)
  inRange('current of a draw', current, -1e9, 1e9)
  const [from, to] = [wiring.at(plus), wiring.at(negative)]
  const island = wiring.islands[from?.island ?? -1]
  if (!(from && to && island) || from.island !== to.island) return undefined
  const port: Port = { from: from.node, to: to.node, power, current }
  const reached = Math.abs(voltageBetween(island.voltages, port)) > noVoltage * island.highest
  return { island: from.island, port, fed: reached || (power === 0 && current < 0) }
}

/** Voltages and currents of a network. Constant powers are supplied at the upper of their two voltages, which is where they come to when they are
 * switched on. Where 0 Ω makes a loop, its current is shared as if each such link had the same small resistance. Resistances from 1e-12 Ω to 1e9 Ω,
 * voltages to 1e9 V, powers and currents to ±1e9, else OutOfRange. Source: nodal analysis (Kirchhoff's current law), `operatingPoint`.
 * @example solveNetwork({ links: [], sources: [{ negative: '-', positive: '+', emf: 100, resistance: 0.1 }],
 * draws: [{ negative: '-', positive: '+', power: 9000 }] }).drawVoltages[0] // ≈ 90 */
export function solveNetwork(network: DcNetwork): NetworkSolution {
  const { draws, sources } = network
  const wires = wiresOf(network)
  const wiring = wiringOf(
    wires,
    draws.flatMap(({ negative, positive: plus }) => [negative, plus]),
  )
  const ports = draws.map((draw) => connected(wiring, draw))
  const said: Said = {
    unfed: indices(ports, (port) => !port?.fed),
    shorted: indices(
      sources,
      ({ negative, positive: plus }) => jointOf(wiring, negative) === jointOf(wiring, plus),
    ),
  }
  const voltages: (readonly number[])[] = []
  const failed: number[] = []
  let share = 1
  for (const [i, island] of wiring.islands.entries()) {
    const here = indices(
      ports,
      (one) => one?.island === i && one.fed && (one.port.power !== 0 || one.port.current !== 0),
    )
    const found = operatingPoint(
      island,
      here.flatMap((k) => ports[k]?.port ?? []),
    )
    if (found.stable) voltages.push(found.voltages)
    else {
      failed.push(...found.ports.map((k) => at(here, k)))
      share = Math.min(share, found.share)
    }
  }
  if (failed.length > 0)
    return { outcome: 'no-solution', draws: failed.sort((a, b) => a - b), share, ...said }
  const drawVoltages = ports.map((one) => (one ? voltageBetween(voltages[one.island] ?? [], one.port) : 0))
  const drawCurrents = ports.map((one, i) => (one?.fed ? portCurrent(one.port, at(drawVoltages, i)) : 0))
  return {
    outcome: 'solved',
    voltages: voltagesAt(wiring, voltages),
    ...flowOf(network, wires, wiring, voltages, drawCurrents),
    drawVoltages,
    drawCurrents,
    ...said,
  }
}

const indices = <T>(of: readonly T[], where: (one: T) => boolean): number[] =>
  of.flatMap((one, i) => (where(one) ? [i] : []))

const jointOf = ({ places, joint }: Wiring, place: string): number => at(joint, places.get(place) ?? -1)

const voltagesAt = (wiring: Wiring, voltages: readonly (readonly number[])[]): Map<string, number> =>
  new Map(
    [...wiring.places.keys()].map((place) => {
      const { island = -1, node = 0 } = wiring.at(place) ?? {}
      return [place, at(voltages[island], node) - at(voltages[island], 0)]
    }),
  )

/** The current of each link and source. */
function flowOf(
  { links, sources, draws }: DcNetwork,
  wires: readonly Wire[],
  wiring: Wiring,
  voltages: readonly (readonly number[])[],
  drawCurrents: readonly number[],
): Pick<FaultFlow, 'linkCurrents' | 'sourceCurrents'> {
  const currents = wires.map(({ ends, resistance, emf }) => {
    if (resistance === 0) return 0
    const [from, to] = ends.map((end) => wiring.at(end))
    const branch = { from: from?.node ?? 0, to: to?.node ?? 0, conductance: 1 / resistance, emf }
    return branchCurrent(voltages[from?.island ?? -1] ?? [], branch)
  })
  // What comes to each place of several that are one node goes on through the links of 0 Ω between them.
  const fed = new Array<number>(wiring.places.size).fill(0)
  const numberOf = (place: string) => wiring.places.get(place) ?? 0
  const move = (from: string, to: string, amps: number) => {
    fed[numberOf(from)] = at(fed, numberOf(from)) - amps
    fed[numberOf(to)] = at(fed, numberOf(to)) + amps
  }
  for (const [i, { ends }] of wires.entries()) move(...ends, at(currents, i))
  for (const [i, { positive: plus, negative }] of draws.entries()) move(plus, negative, at(drawCurrents, i))
  const joining = links.filter(({ resistance }) => resistance === 0)
  const pairs = joining.map(({ ends: [a, b] }) => [numberOf(a), numberOf(b)] as const)
  const reduced = reduce(
    eliminationOf(wiring.places.size, pairs),
    pairs.map(() => 1),
  )
  const heights = reduced ? voltagesOf(reduced, fed) : []
  return {
    sourceCurrents: currents.slice(0, sources.length),
    linkCurrents: links.map(({ ends: [a, b], resistance }, i) =>
      resistance === 0
        ? at(heights, numberOf(a)) - at(heights, numberOf(b))
        : at(currents, sources.length + i),
    ),
  }
}

/** The current of a bolted short circuit between each two places, from the first to the second, A: the voltage between them with no load over the
 * resistance seen from there. 0 where no source makes a voltage between them. Between places that 0 Ω joins already, the part of the current that a
 * second such link takes. A battery-management limit does not count, nor what a controller feeds back. Source: Thévenin's theorem.
 * @example faultCurrents({ links: [], sources: [{ negative: '-', positive: '+', emf: 12, resistance: 0.005 }] }, [['+', '-']])[0] // ≈ 2400 */
export function faultCurrents(
  network: Passive,
  pairs: readonly (readonly [string, string])[],
): readonly number[] {
  const wiring = wiringOf(wiresOf(network), pairs.flat())
  return pairs.map((pair) => {
    if (jointOf(wiring, pair[0]) === jointOf(wiring, pair[1])) return faultFlow(network, pair).current
    const [from, to] = [wiring.at(pair[0]), wiring.at(pair[1])]
    const island = wiring.islands[from?.island ?? -1]
    if (!(from && to && island) || from.island !== to.island) return 0
    const { voltage, resistance } = seenFrom(island, { from: from.node, to: to.node })
    return voltage / resistance
  })
}

/** What each link and source contributes to one bolted short circuit between two places, with no load. Source: nodal analysis with the two places
 * as one node.
 * @example faultFlow({ links: [], sources: [{ negative: '-', positive: '+', emf: 12, resistance: 0.005 }] }, ['+', '-']).sourceCurrents[0] // ≈ 2400 */
export function faultFlow(network: Passive, places: readonly [string, string]): FaultFlow {
  const links = [...network.links, { ends: places, resistance: 0 }]
  const faulted: DcNetwork = { links, sources: network.sources, draws: [] }
  const wires = wiresOf(faulted)
  const wiring = wiringOf(wires, [])
  const voltages = wiring.islands.map((island) => island.voltages)
  const { linkCurrents, sourceCurrents } = flowOf(faulted, wires, wiring, voltages, [])
  return {
    current: at(linkCurrents, network.links.length),
    linkCurrents: linkCurrents.slice(0, -1),
    sourceCurrents,
  }
}
