import { bestInsulationC } from '../../../engineering/electrical/ampacity-tables.ts'
import { conductorResistance, resistanceAt } from '../../../engineering/electrical/conductor.ts'
import { type Block, factOf } from '../../../job/model.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { isSeries } from '../../common/battery-string.ts'
import { celsius } from '../../common/celsius.ts'
import { ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { sectionOf } from './cable-ampacity.ts'
import { outcomeOf } from './cable-outcome.ts'
import { wayBack } from './cable-pole.ts'
import type { Conductor } from './dc-topology.ts'

/** Resistance of a DC cable, out and back, for each metre of its length, Ω/m. In series there is no way back. */
interface Loop {
  /** At 20 °C. */
  readonly cold: number
  /** At the limit of its insulation. */
  readonly hot: number
}

/** Its strands and their finish, where it states them. IEC 60228 has one figure for classes 5 and 6 (from memory). */
function strandsOf(cable: Block) {
  const strands = statedFact(cable, 'cable.conductor-class')
  const tinned = statedFact(cable, 'cable.tinned')
  return {
    ...(strands && { strands: strands === 2 ? ('class 2' as const) : ('class 5' as const) }),
    ...(tinned && { finish: tinned === 'yes' ? ('tinned' as const) : ('plain' as const) }),
  }
}

/** Resistance at 20 °C of one conductor of a cable of so much section (m²). Throws Unreadable. */
export const resistanceOf = (cable: Block, area: number): ReturnType<typeof conductorResistance> =>
  conductorResistance({ section: sectionOf(area), ...strandsOf(cable) })

/** One way. Where the insulation is not stated, the warmest one counts. Throws Unreadable. */
function oneWay(cable: Block): Loop | undefined {
  const area = statedFact(cable, 'cable.conductor')
  if (area === undefined) return undefined
  const cold = resistanceOf(cable, area).ohmPerMetre / (statedFact(cable, 'cable.parallel') ?? 1)
  const insulation = statedFact(cable, 'cable.insulation')
  const conductorC = insulation === undefined ? bestInsulationC : celsius(insulation)
  return { cold, hot: resistanceAt({ resistance: cold, conductorC }) }
}

/** Undefined where its conductor is not known. The way back of a cable of one pole is that beside it, else one like it. */
const loopOf = plan((cable: Block, lookup: Lookup): Loop | undefined => {
  const outcome = outcomeOf(() => {
    const out = oneWay(cable)
    if (!out || isSeries(cable)) return ok(out)
    const other = wayBack(cable, lookup)
    const beside = other && lookup.blockOf(other)
    const back = (beside && oneWay(beside)) ?? out
    const longer = beside
      ? (statedFact(beside, 'cable.length') ?? 1) / (statedFact(cable, 'cable.length') ?? 1)
      : 1
    return ok({ cold: out.cold + back.cold * longer, hot: out.hot + back.hot * longer })
  })
  return outcome.ok ? outcome.value : undefined
})

/** Less joins its two ends. Ω. */
const least = 1e-9

/** Resistance of a piece of cable, out and back, Ω; undefined where its conductor or length is not known. */
export function resistanceIn(
  { cable, length }: Conductor,
  warmth: keyof Loop,
  { blockOf, from }: FileLookup,
): number | undefined {
  const block = blockOf(cable)
  const loop = loopOf(block, from(block))
  // Between batteries in series a piece has no length, so that it lengthens no lead.
  const metres = isSeries(block) ? factOf(block, 'cable.length')?.value : length
  if (!loop || metres === undefined) return undefined
  const resistance = loop[warmth] * metres
  return resistance < least ? 0 : resistance
}
