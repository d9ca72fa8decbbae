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
const mostSteps = 60
/** So many times their voltage under load, batteries have at most without it. */
const mostEmf = 4

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
    if (flow.outcome === 'no-solution') return { emf, flow, over: Number.NEGATIVE_INFINITY }
    const terminals = sources.map(({ resistance }, i) => emf - resistance * (flow.sourceCurrents[i] ?? 0))
    return { emf, flow, over: Math.min(...terminals) - volts }
  }
  // The more charged they are, the higher all voltages: between one state that is too low and one that is not, by regula falsi (Illinois).
  let low = solveAt(volts)
  let high = low
  for (let more = 0.05; high.over < 0 && high.emf < volts * mostEmf; more *= 2) {
    low = high
    high = solveAt(volts * (1 + more))
  }
  let [overLow, overHigh] = [low.over, high.over]
  let last: 'low' | 'high' | undefined
  for (let i = 0; i < mostSteps && low !== high && Math.abs(high.over) > near * volts; i += 1) {
    const part = Number.isFinite(overLow) ? overHigh / (overHigh - overLow) : 0.5
    const at = solveAt(high.emf - part * (high.emf - low.emf))
    // An end that stays twice counts half, so that both ends come nearer.
    if (at.over < -near * volts) {
      if (last === 'low') overHigh /= 2
      ;[low, overLow, last] = [at, at.over, 'low']
    } else {
      if (last === 'high') overLow /= 2
      ;[high, overHigh, last] = [at, at.over, 'high']
    }
  }
  const { flow } = high
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
