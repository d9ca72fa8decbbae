import { getOrInsert } from '../../../common/get-or-insert.ts'
import { reaches } from '../../../engineering/compare.ts'
import { type Block, factOf, type Value } from '../../../job/model.ts'
import { greatest } from '../../../quantity/extremes.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { ok } from '../../common/outcome.ts'
import { endsOf } from './cable-circuit.ts'
import { chargersThrough } from './cable-feed.ts'
import { outcomeOf } from './cable-outcome.ts'
import { partsOfFile } from './dc-parts.ts'
import { sideOf } from './dc-sides.ts'
import { cableCurrent } from './design-current.ts'
import { cablesOfDevice } from './let-through.ts'

interface Carried {
  readonly amps: number
  readonly isStated: boolean
}

/** What some cables carry; undefined where that of one is not known. */
function carriedBy(cables: readonly BlockId[], lookup: Lookup): readonly Carried[] | undefined {
  const all = cables.map((id): Carried | undefined => {
    const cable = lookup.blockOf(id)
    const current = cableCurrent(cable, lookup.from(cable))
    return current.ok
      ? { amps: current.value.current, isStated: factOf(cable, 'cable.design-current') !== undefined }
      : undefined
  })
  const known = all.flatMap((one) => one ?? [])
  return known.length === all.length ? known : undefined
}

const sumOf = (all: readonly Carried[]): number => all.reduce((sum, { amps }) => sum + amps, 0)

/** Cables that feed one place together: each may have to carry all, so that the largest counts, but those that state their own share add up. */
const together = (all: readonly Carried[]): number =>
  Math.max(sumOf(all.filter(({ isStated }) => isStated)), greatest(all.map(({ amps }) => amps)) ?? 0)

/** The continuous current through a switch, A: of the cable it is in, else of those that leave it, else of those that feed it. Undefined where it is
 * not known. */
function throughSwitch(device: Block, lookup: Lookup): number | undefined {
  const { within, supply, outgoing } = cablesOfDevice(device, lookup)
  const leaving = within ? [within] : outgoing
  if (leaving.length > 0) {
    const all = carriedBy(leaving, lookup)
    return all && sumOf(all)
  }
  const all = supply.length > 0 ? carriedBy(supply, lookup) : undefined
  return all && together(all)
}

/** What chargers give through a cable, A. */
const chargedThrough = (cable: Block, lookup: Lookup): number =>
  chargersThrough(cable, lookup.from(cable)).chargers.reduce(
    (sum, charger) => sum + (factOf(charger, 'charger.current')?.value ?? 0),
    0,
  )

/** DC cables by the parts that they end at; of the positive pole alone where there are any. */
const cablesAtParts = ({ ofFile }: FileLookup): ReadonlyMap<BlockId, readonly BlockId[]> => {
  const cablesOf = (isNegative: boolean) => {
    const at = new Map<BlockId, BlockId[]>()
    for (const { cable, ends, pole } of ofFile(partsOfFile).cables)
      if ((pole === 'negative') === isNegative)
        for (const end of new Set(ends.map((one) => one.at)))
          getOrInsert(at, end, (): BlockId[] => []).push(cable)
    return at
  }
  return new Map([...cablesOf(true), ...cablesOf(false)])
}

/** The continuous current through a busbar, A: the more of what the cables that feed it bring and of what its branches take, the cables that alone feed
 * what lies behind them. Undefined where it is not known. */
function throughBusbar(busbar: Block, lookup: Lookup): number | undefined {
  const cables = dcCablesAt(busbar, lookup)
  const outcome = outcomeOf(() => {
    const taking = new Set(
      cables.filter((id) => {
        const cable = lookup.blockOf(id)
        const from = lookup.from(cable)
        const other = endsOf(cable, from).find((end) => end !== busbar)
        const behind = other && sideOf(cable, other, from)
        return behind?.hasLoad && !behind.hasBattery
      }),
    )
    const feeding = cables.filter((id) => !taking.has(id))
    const brought = carriedBy(feeding, lookup)
    const taken = carriedBy([...taking], lookup)
    if (!brought || !taken) return ok(undefined)
    const all = sumOf(taken)
    // Diversity is of the branches: not of what a cable states, what goes on past them, or what is charged.
    return ok(
      greatest([
        (factOf(busbar, 'busbar.diversity')?.value ?? 1) * all,
        ...taken.map(({ amps }) => amps),
        together(brought.filter(({ isStated }) => isStated)),
        ...brought.flatMap(({ amps }) => (reaches(all, amps) ? [] : amps)),
        ...feeding.map((id) => chargedThrough(lookup.blockOf(id), lookup)),
      ]),
    )
  })
  return outcome.ok && cables.length > 0 ? outcome.value : undefined
}

/** What a switch or busbar is rated for; undefined of any other block. */
export function ratedFor(part: Block, fact: 'current' | 'voltage'): Value<number> | undefined {
  const { kind } = part
  return kind === 'isolator' || kind === 'contactor' || kind === 'busbar'
    ? factOf(part, `${kind}.${fact}`)
    : undefined
}

/** The continuous current through a switch or busbar, A; undefined where it is not known. */
export const throughPart = (part: Block, lookup: Lookup): number | undefined =>
  part.kind === 'busbar' ? throughBusbar(part, lookup) : throughSwitch(part, lookup)

/** The DC cables that end at a part. */
export const dcCablesAt = (part: Block, lookup: Lookup): readonly BlockId[] =>
  lookup.ofFile(cablesAtParts).get(idOf(part)) ?? []

/** Any DC cable that ends at a part, or that it is in. */
export function aCableAt(part: Block, lookup: Lookup): Block | undefined {
  const [first] = dcCablesAt(part, lookup)
  return first === undefined ? lookup.referred('in') : lookup.blockOf(first)
}
