import {
  judgeRating,
  type ProtectionWindow,
  protectionWindow,
  type RatingVerdict,
} from '../engineering/electrical/protection.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, childrenOf, factOf } from '../job/model.ts'
import { type CableLoading, cableLoading, sectionOf } from './cable-loading.ts'

/** Whether a protection block says that it protects this cable, or names what it protects so that it could not be read. */
export function isProtected(cable: Block, lookup: Lookup): boolean {
  const protects = (block: Block): boolean => {
    if (block.unread.has('protects')) return true
    const name = factOf(block, 'protection.protects')?.value
    return name !== undefined && lookup.from(block).named(name)?.node === cable.node
  }
  return (
    (cable.parent ? childrenOf(cable.parent, 'protection') : []).some(protects) ||
    lookup.ofKind('protection').some(protects) ||
    lookup.ofKind('drive').some((drive) => childrenOf(drive, 'protection').some(protects))
  )
}

/** Whether the rule for 50 V and over applies is decided by the highest voltage the circuit sees. */
function highest(lookup: Lookup, volts: number): number {
  const battery = lookup.near('battery')
  const window = battery && factOf(battery, 'battery.window')?.value.high
  const nominal = battery && factOf(battery, 'battery.nominal')?.value
  return Math.max(volts, window ?? 0, nominal ?? 0)
}

export interface JudgedRating {
  readonly verdict: RatingVerdict
  readonly window: ProtectionWindow
  readonly load: CableLoading
}

/** How a rating (A) stands to the load and the cable it protects; undefined when the one or the other cannot be worked with. */
export function ratingOf(rating: number, cable: Block | undefined, lookup: Lookup): JudgedRating | undefined {
  const area = cable && factOf(cable, 'cable.conductor')?.value
  const outcome = cable && cableLoading(cable, lookup.from(cable))
  if (!outcome?.ok || area === undefined) return undefined
  const load = outcome.value
  if (load.carries === undefined || load.volts === undefined) return undefined
  try {
    const window = protectionWindow({
      current: load.current,
      ampacity: load.carries,
      volts: highest(lookup, load.volts),
    })
    const series = sectionOf(area).system === 'awg' ? 'us' : 'iec'
    return { verdict: judgeRating(rating, window, series), window, load }
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}
