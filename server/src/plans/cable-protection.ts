import {
  judgeRating,
  type ProtectionWindow,
  protectionWindow,
  type RatingVerdict,
} from '../engineering/electrical/protection.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, factOf } from '../job/model.ts'
import { type CableLoading, cableLoading, sectionOf } from './cable-loading.ts'

/** The protection blocks that say they protect this cable, beside it or in its drive. */
export const protectionsOf = (cable: Block): readonly Block[] =>
  (cable.parent?.children ?? []).filter(
    (block) =>
      block.kind === 'protection' &&
      factOf(block, 'protection.protects')?.value.split('.').at(-1) === cable.name,
  )

export interface JudgedRating {
  readonly verdict: RatingVerdict
  readonly window: ProtectionWindow
  readonly load: CableLoading
}

/** How a rating (A) stands to the load and the cable it protects; undefined when the cable cannot be worked out. */
export function ratingOf(rating: number, cable: Block | undefined, lookup: Lookup): JudgedRating | undefined {
  const load = cable && cableLoading(cable, lookup)
  const area = cable && factOf(cable, 'cable.conductor')?.value
  if (load?.carries === undefined || load.volts === undefined || area === undefined) return undefined
  const window = protectionWindow({ current: load.current, ampacity: load.carries, volts: load.volts })
  return {
    verdict: judgeRating(rating, window, sectionOf(area).system === 'awg' ? 'us' : 'iec'),
    window,
    load,
  }
}
