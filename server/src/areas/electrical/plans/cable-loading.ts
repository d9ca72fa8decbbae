import {
  dcDrop,
  operatingResistance,
  threePhaseDrop,
  touchingCoreReactance,
} from '../../../engineering/electrical/voltage-drop.ts'
import { type Block, factOf } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { isSeries } from '../../common/battery-string.ts'
import { ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { formatAssumption } from './assumption-words.ts'
import { type CableAmpacity, cableAmpacity } from './cable-ampacity.ts'
import type { CableSystem } from './cable-circuit.ts'
import { type CableOutcome, outcomeOf, unsaid } from './cable-outcome.ts'
import { poleOf, wayBack } from './cable-pole.ts'
import { resistanceOf } from './conductor-loop.ts'
import { cableCurrent } from './design-current.ts'

/** What a cable has to carry, what it can, and what is lost in it. A, V, m; `drop` is a ratio of `volts`. */
export interface CableLoading extends CableAmpacity {
  readonly system: CableSystem
  /** Continuous current of the pole or phase. */
  readonly current: number
  readonly currentFrom: string
  readonly perConductor: number
  readonly volts?: number
  readonly dropVolts: number
  readonly drop?: number
  /** Absent when the file gives one that could not be read. */
  readonly dropLimit?: number
  readonly dropLimitFrom: string
}

/** One way along a cable, at working temperature; undefined where its length is not stated. */
function runOf(cable: Block, { area, insulationC, parallel }: CableAmpacity) {
  const length = statedFact(cable, 'cable.length')
  if (length === undefined) return undefined
  const resistance = resistanceOf(cable, area)
  const working = operatingResistance({ ohmPerMetre: resistance.ohmPerMetre, insulationC })
  return { run: { length, ohmPerMetre: working.ohmPerMetre / parallel }, resistance, working }
}

/** The same along the cable of the other pole, where one is written between the same parts. */
function backOf(cable: Block, lookup: Lookup) {
  const id = wayBack(cable, lookup)
  const other = id && lookup.blockOf(id)
  if (!other) return undefined
  const carrying = cableAmpacity(other, lookup.from(other))
  return carrying.ok ? runOf(other, carrying.value) : undefined
}

const backAlike =
  'the way back is as long and as thick as this cable: none of the other pole is written between the same parts'

/** Loading of a cable from the facts of its drive, or why there is none. */
export const cableLoading = plan((cable: Block, lookup: Lookup): CableOutcome<CableLoading> => {
  const carrying = cableAmpacity(cable, lookup)
  if (!carrying.ok) return carrying
  const design = cableCurrent(cable, lookup)
  if (!design.ok) return design
  const { system, current, currentFrom, volts, powerFactor } = design.value
  const { parallel } = carrying.value
  return outcomeOf((): CableOutcome<CableLoading> => {
    const conductor = runOf(cable, carrying.value)
    if (!conductor) return unsaid('its length')
    const { run, resistance, working } = conductor
    const back = backOf(cable, lookup)
    const dropVolts =
      system === 'dc'
        ? dcDrop({ current, out: run, ...(!isSeries(cable) && { back: back?.run ?? run }) })
        : threePhaseDrop({
            current,
            run,
            ohmReactancePerMetre: touchingCoreReactance(50) / parallel,
            powerFactor,
          })
    const allowed = factOf(cable, 'cable.drop')?.value.high
    return ok({
      ...carrying.value,
      system,
      current,
      currentFrom,
      perConductor: current / parallel,
      ...(volts !== undefined && { volts, drop: dropVolts / volts }),
      dropVolts,
      ...(!cable.unread.has('drop') && { dropLimit: allowed ?? 0.03 }),
      dropLimitFrom:
        allowed === undefined ? 'common practice for propulsion feeders, no source' : 'the job file',
      sources: [...carrying.value.sources, resistance.source],
      assumptions: [
        ...design.value.assumptions,
        ...carrying.value.assumptions,
        ...[...resistance.assumptions, ...working.assumptions].map(formatAssumption),
        ...(poleOf(cable) && !back ? [backAlike] : []),
        ...(system === 'dc'
          ? []
          : ['reactance is that of touching cores at 50 Hz: the frequency is not stated']),
      ],
    })
  })
})
