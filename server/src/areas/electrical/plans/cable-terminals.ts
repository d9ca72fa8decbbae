import { ampacity } from '../../../engineering/electrical/ampacity.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { least } from '../../../quantity/extremes.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { isSeries } from '../../common/battery-string.ts'
import { celsius } from '../../common/celsius.ts'
import { ok } from '../../common/outcome.ts'
import { Unreadable } from '../../common/stated-fact.ts'
import { cableAmpacity, sectionOf } from './cable-ampacity.ts'
import { endsOf, systemOf } from './cable-circuit.ts'
import { type CableOutcome, outcomeOf } from './cable-outcome.ts'
import { type Pole, poleOf } from './cable-pole.ts'
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

/** How many lugs the studs of a block bear: of its DC cables those of each pole, for a device on each of its sides; and of its phase cables. */
interface Lugs {
  readonly positive: readonly [from: number, to: number]
  readonly negative: readonly [from: number, to: number]
  readonly phases: number
}

const none: Lugs = { positive: [0, 0], negative: [0, 0], phases: 0 }

/** The poles of the studs at which a cable ends with its first or second end. */
function polesAt(cable: Block, which: number): readonly Pole[] {
  if (isSeries(cable)) return [which === 0 ? 'negative' : 'positive']
  const pole = poleOf(cable)
  return pole ? [pole] : ['positive', 'negative']
}

const addedTo = ([from, to]: Lugs[Pole], which: number, count: number): Lugs[Pole] =>
  which === 0 ? [from + count, to] : [from, to + count]

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
        if (isPhases) lugs.set(id, { ...known, phases: known.phases + count })
        else {
          const more = polesAt(cable, index).map(
            (pole) => [pole, addedTo(known[pole], index, count)] as const,
          )
          lugs.set(id, { ...known, ...Object.fromEntries(more) })
        }
      })
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error
    }
  }
  return lugs
}

/** The most lugs that one power stud of a block bears. A device has a stud for each side; all else has one for each pole and each phase. */
export function lugsOnStud(block: Block, lookup: Lookup): number {
  const { positive, negative, phases } = lookup.ofFile(lugsOfFile).get(idOf(block)) ?? none
  const onPole = ([from, to]: Lugs[Pole]) => (isSwitch(block.kind) ? Math.max(from, to) : from + to)
  return Math.max(phases, onPole(positive), onPole(negative))
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
