import { reaches } from '../../../engineering/compare.ts'
import { type Ampacity, ampacity } from '../../../engineering/electrical/ampacity.ts'
import { bestInsulationC } from '../../../engineering/electrical/ampacity-tables.ts'
import { awgFromArea } from '../../../engineering/electrical/awg.ts'
import type { ConductorSection } from '../../../engineering/electrical/conductor.ts'
import type { Rules, Surroundings } from '../../../engineering/electrical/derating.ts'
import type { Block } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { isSeries } from '../../common/battery-string.ts'
import { celsius, kelvin } from '../../common/celsius.ts'
import { markedAssumed } from '../../common/marked-assumed.ts'
import { ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { formatAssumption } from './assumption-words.ts'
import { systemOf } from './cable-circuit.ts'
import { type CableOutcome, outcomeOf, unsaid } from './cable-outcome.ts'

/** What a cable can carry, whatever it has to. */
export interface CableAmpacity {
  readonly area: number
  /** Class of the insulation, °C. */
  readonly insulationC: number
  readonly parallel: number
  readonly bundled: number
  readonly surroundings: Surroundings
  /** Rules that the job chose; undefined where it did not. */
  readonly rules: Rules | undefined
  /** What one conductor carries. */
  readonly ampacity: Ampacity
  /** What the pole or phase carries, A: all parallel conductors. Where the tables have no such size, as far as they show it. */
  readonly carries: number
  readonly sources: readonly string[]
  readonly assumptions: readonly string[]
}

/** A conductor whose area is that of a wire gauge up to 4/0 is that gauge; any other is metric.
 * @example sectionOf(35e-6) // { system: 'metric', mm2: 35 } */
export function sectionOf(area: number): ConductorSection {
  const n = awgFromArea(area)
  const gauge = Math.round(n)
  return gauge >= -3 && gauge <= 40 && Math.abs(n - gauge) < 1e-6
    ? { system: 'awg', n: gauge }
    : { system: 'metric', mm2: area * 1e6 }
}

/** Whether a cable carries a current (A). Of a conductor smaller than every row of the tables only that it does not can be shown.
 * `not-shown` is no yes. */
export function canCarry(
  { carries, ampacity: { tables } }: Pick<CableAmpacity, 'carries' | 'ampacity'>,
  current: number,
): 'yes' | 'no' | 'not-shown' {
  if (!reaches(carries, current)) return 'no'
  return tables === 'below' ? 'not-shown' : 'yes'
}

/** What a cable carries from its own facts alone, or why that cannot be told. */
export const cableAmpacity = plan((cable: Block, lookup: Lookup) =>
  outcomeOf(() => carriedWith(statedFact(cable, 'cable.insulation'), cable, lookup)),
)

/** Whether the job leaves open what insulation a cable has: it is not stated, or not known yet. */
export const isInsulationOpen = ({ facts, unread, blanks }: Block): boolean =>
  blanks.has('insulation') || !(facts.has('insulation') || unread.has('insulation'))

/** What it would carry with the best insulation of the tables: it can show that a cable is too thin, and never that it is thick enough. */
export const ampacityAtMost = plan((cable: Block, lookup: Lookup) =>
  outcomeOf(() => carriedWith(kelvin(bestInsulationC), cable, lookup)),
)

/** `insulation` in K. */
function carriedWith(
  insulation: number | undefined,
  cable: Block,
  lookup: Lookup,
): CableOutcome<CableAmpacity> {
  const area = statedFact(cable, 'cable.conductor')
  if (area === undefined) return unsaid('the size of its conductors')
  if (insulation === undefined) return unsaid('the temperature rating of its insulation')
  const laid = layingOf(cable, lookup)
  if (!laid.ok) return laid
  const insulationC = celsius(insulation)
  const { parallel, bundled, surroundings } = laid.value
  const rules = rulesOf(lookup)
  const rated = ampacity({ section: sectionOf(area), insulationC, ...surroundings, bundled, rules })
  return ok({
    area,
    insulationC,
    parallel,
    bundled,
    surroundings,
    rules,
    ampacity: rated,
    carries: rated.amps * parallel,
    sources: [rated.source, ...rated.factors.map((factor) => factor.source)],
    assumptions: [
      ...markedAssumed([cable]),
      ...laid.value.assumptions,
      ...(rules ? [] : [rulesOpen]),
      ...rated.assumptions.map(formatAssumption),
    ],
  })
}

/** The rules that the job chose. */
const rulesOf = (lookup: Lookup): Rules | undefined => statedFact(lookup.near('job'), 'job.rules')

const rulesOpen =
  'the job chooses no `rules`: for metric sizes the lower of the tables of ISO and the US, and the factors of the US'

interface Laying {
  readonly surroundings: Surroundings
  readonly parallel: number
  readonly bundled: number
  readonly assumptions: readonly string[]
}

/** Where the conductors lie, and how many together. */
function layingOf(cable: Block, lookup: Lookup): CableOutcome<Laying> {
  const place = statedFact(cable, 'cable.place')
  const ambient = statedFact(cable, 'cable.ambient')
  const parallel = statedFact(cable, 'cable.parallel') ?? 1
  const bundled = statedFact(cable, 'cable.bundled')
  const system = bundled === undefined ? systemOf(cable, lookup) : undefined
  if (bundled === undefined && !system) return unsaid('whether it carries DC or three phases')
  const own = (isSeries(cable) ? 1 : system === 'three-phase' ? 3 : 2) * parallel
  return ok({
    surroundings:
      ambient === undefined
        ? { place: place ?? 'machinery-space' }
        : { place: place ?? 'open', ambientC: celsius(ambient) },
    parallel,
    bundled: bundled ?? own,
    assumptions: [
      ...(place || ambient !== undefined
        ? []
        : ['the cable lies in a machinery space: its place is not stated']),
      ...(bundled === undefined
        ? [own === 1 ? 'it lies by itself' : `its ${own} conductors are bundled, with no others`]
        : []),
    ],
  })
}
