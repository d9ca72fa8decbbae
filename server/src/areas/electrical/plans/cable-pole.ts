import { getOrInsert } from '../../../common/get-or-insert.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import { type BlockId, between } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { headOf } from '../../common/battery-string.ts'
import { Unreadable } from '../../common/stated-fact.ts'
import { endsOf } from './cable-circuit.ts'
import { switchKinds } from './dc-parts.ts'

export type Pole = 'positive' | 'negative'

/** The pole of a cable of one pole; undefined of one that has both, and of one in series. */
export function poleOf(cable: Block): Pole | undefined {
  const pole = factOf(cable, 'cable.pole')?.value
  return pole === 'series' ? undefined : pole
}

export const otherPole = { positive: 'negative', negative: 'positive' } as const

/** The cables of one pole between two parts. */
type Pair = Readonly<Record<Pole, BlockId[]>>

interface PolesOfFile {
  /** By the ends. */
  readonly pairs: ReadonlyMap<string, Pair>
  /** What ends at each part, of a converter at each side. */
  readonly at: ReadonlyMap<string, ReadonlySet<Pole | 'both'>>
}

interface End {
  /** A string is one part, and a converter two. */
  readonly part: string
  readonly kind: string
}

const endAt = (block: Block, which: number, lookup: Lookup): End => ({
  part: block.kind === 'converter' ? `${idOf(block)}${between}${which}` : idOf(headOf(block, lookup)),
  kind: block.kind,
})

/** In the order from, to; none where they cannot be read. */
function endsRead(cable: Block, lookup: Lookup): readonly (End | undefined)[] {
  try {
    return endsOf(cable, lookup).map((block, which) => block && endAt(block, which, lookup))
  } catch (error) {
    if (error instanceof Unreadable) return []
    throw error
  }
}

function pairKey([from, to]: readonly (End | undefined)[]): string | undefined {
  return from && to ? [from.part, to.part].toSorted().join(between.repeat(2)) : undefined
}

function polesOfFile({ ofKind, from }: FileLookup): PolesOfFile {
  const pairs = new Map<string, Pair>()
  const at = new Map<string, Set<Pole | 'both'>>()
  const add = ({ part }: End, pole: Pole | 'both') =>
    getOrInsert(at, part, () => new Set<Pole | 'both'>()).add(pole)
  const drives = ofKind('drive')
  const all = (kind: string) => [...ofKind(kind), ...drives.flatMap((drive) => childrenOf(drive, kind))]
  const cables = all('cable')
  if (!cables.some(poleOf)) return { pairs, at }
  for (const cable of cables) {
    const ends = endsRead(cable, from(cable))
    const pole = poleOf(cable)
    const key = pairKey(ends)
    for (const end of ends) if (end) add(end, pole ?? 'both')
    if (pole && key !== undefined)
      getOrInsert(pairs, key, (): Pair => ({ positive: [], negative: [] }))[pole].push(idOf(cable))
  }
  for (const device of switchKinds.flatMap(all))
    for (const [which, end] of (['to', 'from'] as const).entries()) {
      const part = from(device).referred(end)
      if (part) add(endAt(part, which, from(device)), 'both')
    }
  return { pairs, at }
}

/** The cable of the other pole between the same parts. */
export const wayBack = plan((cable: Block, lookup: Lookup): BlockId | undefined => {
  const pole = poleOf(cable)
  const key = pole && pairKey(endsRead(cable, lookup))
  const pair = key === undefined ? undefined : lookup.ofFile(polesOfFile).pairs.get(key)
  if (!pole || !pair) return undefined
  const others = pair[otherPole[pole]]
  return others[pair[pole].indexOf(idOf(cable))] ?? others[0]
})

/** The cable of the positive pole beside one of the negative; any other cable itself. What is found of the one holds for the other: they carry one current. */
export const positiveOf = (cable: Block, lookup: Lookup): BlockId =>
  (poleOf(cable) === 'negative' ? wayBack(cable, lookup) : undefined) ?? idOf(cable)

const ending = ['battery', 'controller', 'motor', 'load', 'charger', 'converter']

/** The ends of a cable of one pole at which none of the other pole ends: what they feed has no way back in the job. */
export function endsWithoutOther(cable: Block, lookup: Lookup): readonly ('from' | 'to')[] {
  const pole = poleOf(cable)
  if (!pole) return []
  const { at } = lookup.ofFile(polesOfFile)
  return endsRead(cable, lookup).flatMap((end, which) => {
    const poles = end && ending.includes(end.kind) ? at.get(end.part) : undefined
    const isOpen = poles && !poles.has('both') && !poles.has(otherPole[pole])
    return isOpen ? [which === 0 ? ('from' as const) : ('to' as const)] : []
  })
}
