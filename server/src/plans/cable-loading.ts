import { type Ampacity, ampacity, type NoTableRow } from '../engineering/electrical/ampacity.ts'
import { awgFromArea } from '../engineering/electrical/awg.ts'
import { type ConductorSection, conductorResistance } from '../engineering/electrical/conductor.ts'
import {
  dcDrop,
  operatingResistance,
  threePhaseDrop,
  touchingCoreReactance,
} from '../engineering/electrical/voltage-drop.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, factOf } from '../job/model.ts'
import { designCurrent } from './design-current.ts'

export type CableSystem = 'dc' | 'three-phase'

/** What a cable has to carry and what it can. A, V, m; `drop` is a ratio of `volts`. */
export interface CableLoading {
  readonly system: CableSystem
  /** Continuous current of the pole or phase. */
  readonly current: number
  readonly currentFrom: string
  readonly parallel: number
  readonly bundled: number
  /** What one conductor carries, or that no table has its size. */
  readonly ampacity: Ampacity | NoTableRow
  /** What the pole or phase carries: all parallel conductors; absent when no table has the size. */
  readonly carries?: number
  readonly volts?: number
  readonly dropVolts: number
  readonly drop?: number
  readonly dropLimit: number
  readonly dropLimitFrom: string
  readonly assumptions: readonly string[]
}

/** A conductor whose area is that of a wire gauge is that gauge; any other is metric.
 * @example sectionOf(35e-6) // { system: 'metric', mm2: 35 } */
export function sectionOf(area: number): ConductorSection {
  const n = awgFromArea(area)
  return Math.abs(n - Math.round(n)) < 1e-6
    ? { system: 'awg', n: Math.round(n) }
    : { system: 'metric', mm2: area * 1e6 }
}

/** What a cable is for: as it says, else by what it joins. Undefined when neither tells. */
export function systemOf(cable: Block, lookup: Lookup): CableSystem | undefined {
  const said = factOf(cable, 'cable.system')?.value
  if (said) return said
  const ends = [factOf(cable, 'cable.from')?.value, factOf(cable, 'cable.to')?.value].map(
    (name) => name && lookup.named(name)?.kind,
  )
  if (ends.includes('motor')) return 'three-phase'
  return ends.includes('battery') || ends.includes('protection') ? 'dc' : undefined
}

/** Loading of a cable from the facts of its drive. Undefined when too little is said, or when a figure cannot be worked with: never throws. */
export function cableLoading(cable: Block, lookup: Lookup): CableLoading | undefined {
  try {
    return load(cable, lookup)
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}

function load(cable: Block, lookup: Lookup): CableLoading | undefined {
  const area = factOf(cable, 'cable.conductor')?.value
  const length = factOf(cable, 'cable.length')?.value
  const insulation = factOf(cable, 'cable.insulation')?.value
  const system = systemOf(cable, lookup)
  if (area === undefined || length === undefined || insulation === undefined || !system) return undefined
  const design = designCurrent(cable, system, lookup)
  if (!design) return undefined

  const assumptions = [...design.assumptions]
  const place = factOf(cable, 'cable.place')?.value
  if (!place) assumptions.push('the cable lies in a machinery space (50 °C): its place is not said')
  const parallel = factOf(cable, 'cable.parallel')?.value ?? 1
  const own = (system === 'three-phase' ? 3 : 2) * parallel
  const said = factOf(cable, 'cable.bundled')?.value
  if (said === undefined) assumptions.push(`its ${own} conductors lie together, and no others with them`)
  const bundled = said ?? own

  const section = sectionOf(area)
  const insulationC = insulation - 273.15
  // Rounded, so that 105 °C written and read back is still the column of 105 °C.
  const column = Math.round(insulationC * 1e6) / 1e6
  const rated = ampacity({ section, insulationC: column, place: place ?? 'machinery-space', bundled })
  if ('assumptions' in rated) assumptions.push(...rated.assumptions)

  const resistance = conductorResistance({ section })
  const working = operatingResistance({ ohmPerMetre: resistance.ohmPerMetre, insulationC: column })
  assumptions.push(...resistance.assumptions, ...working.assumptions)
  const run = { length, ohmPerMetre: working.ohmPerMetre / parallel }
  const dropVolts =
    system === 'dc'
      ? dcDrop({ current: design.current, out: run, back: run })
      : threePhaseDrop({
          current: design.current,
          run,
          ohmReactancePerMetre: touchingCoreReactance(50) / parallel,
          powerFactor: design.powerFactor,
        })
  const stated = factOf(cable, 'cable.drop')?.value.high
  return {
    system,
    current: design.current,
    currentFrom: design.from,
    parallel,
    bundled,
    ampacity: rated,
    ...('amps' in rated && { carries: rated.amps * parallel }),
    ...(design.volts !== undefined && { volts: design.volts, drop: dropVolts / design.volts }),
    dropVolts,
    dropLimit: stated ?? 0.03,
    dropLimitFrom:
      stated === undefined ? 'common practice for propulsion feeders, no source' : 'the job file',
    assumptions,
  }
}
