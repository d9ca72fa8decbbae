import { getOrInsert } from '../../../common/get-or-insert.ts'
import { SamePlaces } from '../../../common/same-places.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import type { Band } from '../../../quantity/band.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { stringsOfFile } from '../../common/battery-string.ts'
import { Unreadable } from '../../common/stated-fact.ts'
import { nominalOf } from '../../common/string-facts.ts'
import { suppliesOf } from './controller-supply.ts'

interface FedController {
  readonly id: BlockId
  readonly input: Band
  /** What it gets, V. */
  readonly low: number
  readonly high: number
}

/** Batteries that cables join by both poles, one to the next. */
interface SideBySide {
  readonly batteries: readonly BlockId[]
  /** What they would give in series, V; undefined where it is not known. */
  readonly nominal: number | undefined
  /** Those that one of them feeds. */
  readonly controllers: readonly FedController[]
}

/** The controllers that each battery feeds. */
function fedInFile({ ofKind, from }: FileLookup): ReadonlyMap<BlockId, readonly FedController[]> {
  const fed = new Map<BlockId, FedController[]>()
  const inDrives = ofKind('drive').flatMap((drive) => childrenOf(drive, 'controller'))
  for (const controller of [...ofKind('controller'), ...inDrives]) {
    const input = factOf(controller, 'controller.input')?.value
    for (const { battery, low, high } of input ? suppliesOf(controller, from(controller)) : [])
      if (input)
        getOrInsert(fed, idOf(battery), (): FedController[] => []).push({
          id: idOf(controller),
          input,
          low,
          high,
        })
  }
  return fed
}

/** The two batteries that a cable joins by both poles. */
function pairOf(cable: Block, from: FileLookup['from']): readonly [BlockId, BlockId] | undefined {
  if (cable.facts.has('pole') || cable.unread.has('pole')) return undefined
  const lookup = from(cable)
  const [one, other] = [lookup.referred('from'), lookup.referred('to')]
  return one?.kind === 'battery' && other?.kind === 'battery' && one !== other
    ? [idOf(one), idOf(other)]
    : undefined
}

function sideBySideInFile({ ofKind, ofFile, from, blockOf }: FileLookup): ReadonlyMap<BlockId, SideBySide> {
  const cables = [...ofKind('cable'), ...ofKind('drive').flatMap((drive) => childrenOf(drive, 'cable'))]
  const pairs = cables.flatMap((cable) => {
    const pair = pairOf(cable, from)
    return pair ? [pair] : []
  })
  if (pairs.length === 0) return new Map()
  const strings = ofFile(stringsOfFile)
  const same = new SamePlaces()
  for (const [one, other] of pairs) same.join(one, other)
  const groups = new Map<string, Set<BlockId>>()
  for (const battery of pairs.flat())
    getOrInsert(groups, same.of(battery), () => new Set<BlockId>()).add(battery)
  const fed = ofFile(fedInFile)
  return new Map(
    [...groups.values()].flatMap((group) => {
      const batteries = [...group]
      if (batteries.some((battery) => strings.has(battery))) return []
      const joined: SideBySide = {
        batteries,
        nominal: nominalIfRead(batteries.map(blockOf)),
        controllers: batteries.flatMap((battery) => fed.get(battery) ?? []),
      }
      return batteries.map((battery) => [battery, joined] as const)
    }),
  )
}

function nominalIfRead(batteries: readonly Block[]): number | undefined {
  try {
    return nominalOf(batteries)
  } catch (error) {
    if (error instanceof Unreadable) return undefined
    throw error
  }
}

/** The batteries that a cable joins side by side with all that are beside them; undefined of any other cable. */
export function sideBySide(cable: Block, lookup: Lookup): SideBySide | undefined {
  const pair = pairOf(cable, lookup.from)
  return pair && lookup.ofFile(sideBySideInFile).get(pair[0])
}
