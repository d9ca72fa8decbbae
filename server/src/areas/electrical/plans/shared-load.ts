import type { NetworkLink } from '../../../engineering/electrical/dc-network.ts'
import type { BlockId } from '../../../store/block-id.ts'
import { drawAt, ground, inSource, type Sink, type Source, solved, solvedFrom } from './supplied-network.ts'

/** A source with what lies in it. */
export interface Shared extends Source {
  /** Ω; undefined where it is not known. */
  readonly resistance: number | undefined
}

/** Currents and voltages of a network in which its batteries share the load. */
export interface SharedLoad {
  /** A, out of each source; negative while charging. */
  readonly given: ReadonlyMap<BlockId, number>
  /** V, at each part that takes something. */
  readonly reached: ReadonlyMap<BlockId, number>
  /** A, in each wire. */
  readonly through: ReadonlyMap<NetworkLink, number>
  /** Of each part that asks for more than can come to it, what part of its power can. */
  readonly beyond: ReadonlyMap<BlockId, number>
}

/** What batteries side by side give: of one state of charge, each with its resistance, so that the weakest is at `volts` (V). One alone is at `volts`
 * whatever it gives. Without the resistance of each, the cables alone share the load. */
export function sharedLoad(
  sources: readonly Shared[],
  volts: number,
  wires: readonly NetworkLink[],
  sinks: readonly Sink[],
): SharedLoad {
  const known = sources.flatMap(({ part, place, resistance }) =>
    resistance === undefined ? [] : [{ part, place, resistance: Math.max(resistance, inSource) }],
  )
  return sources.length > 1 && known.length === sources.length
    ? charged(known, volts, wires, sinks)
    : solvedFrom(sources, volts, wires, sinks)
}

type Known = Pick<Source, 'part' | 'place'> & { readonly resistance: number }

/** How near the weakest battery is to its voltage when it counts as there, as a part of it. */
const near = 1e-7
/** Each step leaves about the part of the voltage that is lost inside the batteries. */
const mostSteps = 30

function charged(
  sources: readonly Known[],
  volts: number,
  wires: readonly NetworkLink[],
  sinks: readonly Sink[],
): SharedLoad {
  const solveAt = (emf: number) => {
    const flow = solved({
      links: wires,
      sources: sources.map(({ place, resistance }) => ({
        negative: ground,
        positive: place,
        emf,
        resistance,
      })),
      draws: sinks.map(({ place, draw }) => ({ negative: ground, positive: place, ...drawAt(draw, volts) })),
    })
    const currents = flow.outcome === 'solved' ? flow.sourceCurrents : []
    const terminals = sources.map(({ resistance }, i) => emf - resistance * (currents[i] ?? 0))
    return { flow, short: volts - Math.min(...terminals) }
  }
  let emf = volts
  let at = solveAt(emf)
  for (
    let i = 0;
    i < mostSteps && (Math.abs(at.short) > near * volts || at.flow.outcome !== 'solved');
    i += 1
  ) {
    // No solution at this state of charge says nothing of a higher one: the batteries lose at most as much again.
    emf += at.flow.outcome === 'solved' ? at.short : volts / mostSteps
    at = solveAt(emf)
  }
  const { flow } = at
  if (flow.outcome === 'no-solution')
    return {
      given: new Map(),
      reached: new Map(),
      through: new Map(),
      beyond: new Map(flow.draws.flatMap((i) => (sinks[i] ? [[sinks[i].part, flow.share]] : []))),
    }
  return {
    given: new Map(sources.map(({ part }, i) => [part, flow.sourceCurrents[i] ?? 0])),
    reached: new Map(
      sinks.flatMap(({ part }, i) => (flow.unfed.includes(i) ? [] : [[part, flow.drawVoltages[i] ?? 0]])),
    ),
    through: new Map(wires.map((wire, i) => [wire, flow.linkCurrents[i] ?? 0])),
    beyond: new Map(),
  }
}
