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
import { designCurrent, endsOf } from './design-current.ts'
import { remembered } from './remembered.ts'
import { said } from './said.ts'

export type CableSystem = 'dc' | 'three-phase'

/** What a cable has to carry and what it can. A, V, m; `drop` is a ratio of `volts`. */
export interface CableLoading {
  readonly system: CableSystem
  /** Continuous current of the pole or phase. */
  readonly current: number
  readonly currentFrom: string
  readonly parallel: number
  readonly perConductor: number
  readonly bundled: number
  /** What one conductor carries, or that no table has its size. */
  readonly ampacity: Ampacity | NoTableRow
  /** What the pole or phase carries: all parallel conductors; absent when no table has the size. */
  readonly carries?: number
  readonly volts?: number
  readonly dropVolts: number
  readonly drop?: number
  /** Absent when the file gives one that could not be read. */
  readonly dropLimit?: number
  readonly dropLimitFrom: string
  readonly sources: readonly string[]
  readonly assumptions: readonly string[]
}

/** What stands in the way, with words for a person. */
export interface CableFault {
  readonly type: 'unsaid' | 'impossible'
  readonly words: string
}

export type LoadingOutcome =
  | { readonly ok: true; readonly value: CableLoading }
  | { readonly ok: false; readonly fault: CableFault }

/** A conductor whose area is that of a wire gauge up to 4/0 is that gauge; any other is metric.
 * @example sectionOf(35e-6) // { system: 'metric', mm2: 35 } */
export function sectionOf(area: number): ConductorSection {
  const n = awgFromArea(area)
  const gauge = Math.round(n)
  return gauge >= -3 && gauge <= 40 && Math.abs(n - gauge) < 1e-6
    ? { system: 'awg', n: gauge }
    : { system: 'metric', mm2: area * 1e6 }
}

/** What a cable is for: as it says, else by what it joins. Undefined when neither tells. RangeError when what it says could not be read. */
export function systemOf(cable: Block, lookup: Lookup): CableSystem | undefined {
  const system = said(cable, 'cable.system')
  if (system) return system
  const ends = endsOf(cable, lookup).map((end) => end?.kind)
  if (ends.includes('motor')) return 'three-phase'
  return ends.includes('battery') || ends.includes('protection') ? 'dc' : undefined
}

/** Loading of a cable from the facts of its drive, or why there is none. Never throws on figures: what the engineering floor rejects comes back
 * as a fault. */
export const cableLoading = remembered((cable: Block, lookup: Lookup): LoadingOutcome => {
  try {
    return load(cable, lookup)
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    return {
      ok: false,
      fault: { type: 'impossible', words: `The cable cannot be worked out: ${error.message}.` },
    }
  }
})

const unsaid = (what: string): LoadingOutcome => ({
  ok: false,
  fault: { type: 'unsaid', words: `The cable cannot be worked out: the job does not say ${what}.` },
})

function load(cable: Block, lookup: Lookup): LoadingOutcome {
  const area = said(cable, 'cable.conductor')
  const length = said(cable, 'cable.length')
  const insulation = said(cable, 'cable.insulation')
  if (area === undefined) return unsaid('the section of its conductors')
  if (length === undefined) return unsaid('its length')
  if (insulation === undefined) return unsaid('the temperature its insulation is rated for')
  const system = systemOf(cable, lookup)
  if (!system) return unsaid('whether it carries DC or three phases')
  const design = designCurrent(cable, system, lookup)
  if ('unsaid' in design) return unsaid(design.unsaid)

  const section = sectionOf(area)
  // Rounded: a class that came through kelvins is said as it was written.
  const insulationC = Math.round((insulation - 273.15) * 1e6) / 1e6
  const laid = layingOf(cable, system)
  const rated = ampacity({ section, insulationC, place: laid.place, bundled: laid.bundled })
  const resistance = conductorResistance({ section })
  const working = operatingResistance({ ohmPerMetre: resistance.ohmPerMetre, insulationC })
  const run = { length, ohmPerMetre: working.ohmPerMetre / laid.parallel }
  const dropVolts =
    system === 'dc'
      ? dcDrop({ current: design.current, out: run, back: run })
      : threePhaseDrop({
          current: design.current,
          run,
          ohmReactancePerMetre: touchingCoreReactance(50) / laid.parallel,
          powerFactor: design.powerFactor,
        })
  const allowed = factOf(cable, 'cable.drop')?.value.high
  return {
    ok: true,
    value: {
      system,
      current: design.current,
      currentFrom: design.from,
      parallel: laid.parallel,
      perConductor: design.current / laid.parallel,
      bundled: laid.bundled,
      ampacity: rated,
      ...('amps' in rated && { carries: rated.amps * laid.parallel }),
      ...(design.volts !== undefined && { volts: design.volts, drop: dropVolts / design.volts }),
      dropVolts,
      ...(!cable.unread.has('drop') && { dropLimit: allowed ?? 0.03 }),
      dropLimitFrom:
        allowed === undefined ? 'common practice for propulsion feeders, no source' : 'the job file',
      sources: [
        ...('amps' in rated ? [rated.source, ...rated.factors.map((factor) => factor.source)] : []),
        resistance.source,
      ],
      assumptions: [
        ...design.assumptions,
        ...laid.assumptions,
        ...('amps' in rated ? rated.assumptions : []),
        ...resistance.assumptions,
        ...working.assumptions,
        ...(system === 'dc'
          ? []
          : ['reactance is that of touching cores at 50 Hz: the job does not say the frequency']),
      ],
    },
  }
}

/** Where the conductors lie, and how many together. */
function layingOf(cable: Block, system: CableSystem) {
  const place = said(cable, 'cable.place')
  const parallel = said(cable, 'cable.parallel') ?? 1
  const own = (system === 'three-phase' ? 3 : 2) * parallel
  const bundled = said(cable, 'cable.bundled')
  return {
    place: place ?? ('machinery-space' as const),
    parallel,
    bundled: bundled ?? own,
    assumptions: [
      ...(place ? [] : ['the cable lies in a machinery space: the job does not say its place']),
      ...(bundled === undefined ? [`its ${own} conductors lie together, and no others with them`] : []),
    ],
  }
}
