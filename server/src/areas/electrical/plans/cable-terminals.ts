import { ampacity } from '../../../engineering/electrical/ampacity.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { least } from '../../../quantity/extremes.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { ok } from '../../common/outcome.ts'
import { Unreadable } from '../../common/stated-fact.ts'
import { cableAmpacity, celsius, sectionOf } from './cable-ampacity.ts'
import { endsOf, systemOf } from './cable-circuit.ts'
import { type CableOutcome, outcomeOf } from './cable-outcome.ts'
import { isSwitch } from './dc-parts.ts'

/** Kinds whose power terminals the job describes. */
const terminalKinds = [
  'battery',
  'busbar',
  'controller',
  'motor',
  'protection',
  'isolator',
  'contactor',
] as const

type TerminalFact = 'stud' | 'torque' | 'terminal-temperature'
type TerminalPath<F extends TerminalFact> = `${(typeof terminalKinds)[number]}.${F}`

/** A fact of the terminals of a part that a cable ends at. */
export function terminalFact<F extends TerminalFact>(block: Block, fact: F) {
  const [value] = terminalKinds.flatMap((kind) => factOf(block, `${kind}.${fact}` as TerminalPath<F>) ?? [])
  return value
}

/** How many lugs a stud of a block bears: of its DC cables, those of a device on each of its sides, and of its phase cables. */
interface Lugs {
  readonly from: number
  readonly to: number
  readonly phases: number
}

const none: Lugs = { from: 0, to: 0, phases: 0 }

/** Lugs of all cables of a file by the block they end at. Cables that cannot be read are left out: they have findings of their own. */
function lugsOfFile({ ofKind, from: asked }: FileLookup): ReadonlyMap<BlockId, Lugs> {
  const cables = [...ofKind('drive').flatMap((drive) => childrenOf(drive, 'cable')), ...ofKind('cable')]
  const lugs = new Map<BlockId, Lugs>()
  for (const cable of cables) {
    const lookup = asked(cable)
    try {
      const isPhases = systemOf(cable, lookup) === 'three-phase'
      const count = factOf(cable, 'cable.parallel')?.value ?? 1
      endsOf(cable, lookup).forEach((end, index) => {
        if (!end) return
        const id = idOf(end)
        const known = lugs.get(id) ?? none
        const of = isPhases ? 'phases' : index === 0 ? 'from' : 'to'
        lugs.set(id, { ...known, [of]: known[of] + count })
      })
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error
    }
  }
  return lugs
}

/** The most lugs that one power stud of a block bears. A device has a stud for each side; all else has one for each pole and each phase. */
export function lugsOnStud(block: Block, lookup: Lookup): number {
  const { from, to, phases } = lookup.ofFile(lugsOfFile).get(idOf(block)) ?? none
  return Math.max(phases, isSwitch(block.kind) ? Math.max(from, to) : from + to)
}

/** The tables of cables have no column for less, °C. */
const coolestColumnC = 60

/** What a cable carries at the cooler of its terminals, A. */
interface TerminalAmpacity {
  readonly carries: number
  /** With the terminals at 30 °C: beyond that they are overloaded wherever they are. */
  readonly carriesOpen: number
  readonly terminalC: number
  readonly insulationC: number
  readonly source: string
}

/** Undefined where no terminal is rated for less than the insulation; `below-tables` where one is rated for less than any column of them. Bundling is left out: at the terminals the conductors lie apart. */
export const terminalAmpacity = plan(
  (cable: Block, lookup: Lookup): CableOutcome<TerminalAmpacity | 'below-tables' | undefined> => {
    const carrying = cableAmpacity(cable, lookup)
    if (!carrying.ok) return carrying
    const { area, insulationC, parallel, surroundings, rules } = carrying.value
    return outcomeOf((): CableOutcome<TerminalAmpacity | 'below-tables' | undefined> => {
      const rated = endsOf(cable, lookup).flatMap(
        (end) => (end && terminalFact(end, 'terminal-temperature')?.value) ?? [],
      )
      const lowest = least(rated)
      const terminalC = lowest === undefined ? undefined : celsius(lowest)
      if (terminalC === undefined || terminalC >= insulationC) return ok(undefined)
      if (terminalC < coolestColumnC) return ok('below-tables')
      const given = { section: sectionOf(area), insulationC: terminalC, bundled: 1, rules }
      const [here, open] = [ampacity({ ...given, ...surroundings }), ampacity({ ...given, place: 'open' })]
      return ok({
        carries: here.amps * parallel,
        carriesOpen: open.amps * parallel,
        terminalC,
        insulationC,
        source: here.source,
      })
    })
  },
)
