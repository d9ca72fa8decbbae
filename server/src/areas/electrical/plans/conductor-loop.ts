import { bestInsulationC } from '../../../engineering/electrical/ampacity-tables.ts'
import { conductorResistance, resistanceAt } from '../../../engineering/electrical/conductor.ts'
import type { Block } from '../../../job/model.ts'
import { plan } from '../../../store/plan.ts'
import { celsius } from '../../common/celsius.ts'
import { ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { sectionOf } from './cable-ampacity.ts'
import { outcomeOf } from './cable-outcome.ts'

/** Resistance of one metre of a DC cable, out and back where it has both poles, Ω/m. */
export interface Loop {
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
export const resistanceOf = (cable: Block, area: number) =>
  conductorResistance({ section: sectionOf(area), ...strandsOf(cable) })

/** Undefined where its conductor is not known. Where its insulation is not stated, the warmest one counts. */
export const loopOf = plan((cable: Block): Loop | undefined => {
  const outcome = outcomeOf(() => {
    const area = statedFact(cable, 'cable.conductor')
    if (area === undefined) return ok(undefined)
    const { ohmPerMetre } = resistanceOf(cable, area)
    // A cable of one pole, or in series, has no way back of its own.
    const ways = statedFact(cable, 'cable.pole') === undefined ? 2 : 1
    const cold = (ways * ohmPerMetre) / (statedFact(cable, 'cable.parallel') ?? 1)
    const insulation = statedFact(cable, 'cable.insulation')
    const conductorC = insulation === undefined ? bestInsulationC : celsius(insulation)
    return ok({ cold, hot: resistanceAt({ resistance: cold, conductorC }) })
  })
  return outcome.ok ? outcome.value : undefined
})
