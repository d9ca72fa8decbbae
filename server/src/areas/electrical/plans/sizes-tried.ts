import { reaches } from '../../../engineering/compare.ts'
import { smallestSection } from '../../../engineering/electrical/smallest-section.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { formatShare } from '../../../quantity/format-measures.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { formatCarried, formatLoad } from '../../common/amperes.ts'
import { canCarry, sectionOf } from './cable-ampacity.ts'
import { type CableLoading, cableLoading } from './cable-loading.ts'
import { fittingRating, isProtected, isUnprotected } from './cable-protection.ts'
import { terminalAmpacity } from './cable-terminals.ts'
import { loadingWords } from './cable-words.ts'
import { type ConductorSize, conductorSizes } from './conductor-sizes.ts'
import { coolFuse, type FuseHeat, heatAround } from './fuse-ambient.ts'
import { fusesIn } from './let-through.ts'

/** A size that is made, with all that speaks against it for this cable; nothing where it passes. */
export interface SizeTried extends ConductorSize {
  readonly faults: readonly string[]
}

/** The sizes of the system that a cable is in, the smallest allowed first, up to the first that passes; all where none does. None without a conductor, and
 * where what the cable has to carry cannot be worked out. */
export function sizesTried(lookup: Lookup, above = 0): readonly SizeTried[] {
  const { block: cable } = lookup
  const now = factOf(cable, 'cable.conductor')?.value
  if (now === undefined || !cableLoading(cable, lookup).ok) return []
  const fused = isProtected(cable, lookup) || isUnprotected(cable, lookup)
  const { system } = sectionOf(now)
  const { alone } = smallestSection(system)
  const tried: SizeTried[] = []
  for (const size of conductorSizes[system]) {
    if (size.area <= above || !reaches(size.area, alone)) continue
    const faults = lookup.suppose('cable.conductor', size.area, () => faultsOf(cable, lookup, fused))
    tried.push({ ...size, faults })
    if (faults.length === 0) break
  }
  return tried
}

function faultsOf(cable: Block, lookup: Lookup, fused: boolean): readonly string[] {
  const outcome = cableLoading(cable, lookup)
  if (!outcome.ok) return [outcome.fault.words]
  const load = outcome.value
  return [
    ...currentFault(load),
    ...terminalFault(load, cable, lookup),
    ...dropFault(load),
    ...(fused && fittingRating(cable, lookup, hottestFuse(cable, lookup)) === undefined
      ? ['no standard fuse is between load and cable']
      : []),
  ]
}

/** Of the fuses in a cable the one that the heat around it leaves the least. */
const hottestFuse = (cable: Block, lookup: Lookup): FuseHeat =>
  fusesIn(cable, lookup)
    .map((id) => heatAround(lookup.blockOf(id)))
    .reduce((least, heat) => (heat.share < least.share ? heat : least), coolFuse)

function currentFault(load: CableLoading): readonly string[] {
  if (canCarry(load, load.current) === 'yes') return []
  const { current, carries } = loadingWords(load)
  return [`can carry ${carries}, must carry ${current}`]
}

function terminalFault({ current }: CableLoading, cable: Block, lookup: Lookup): readonly string[] {
  const terminal = terminalAmpacity(cable, lookup)
  const limit = terminal.ok ? terminal.value : undefined
  return !limit || limit === 'below-tables' || reaches(limit.carries, current)
    ? []
    : [`at its terminal ${formatCarried(limit.carries)}, must carry ${formatLoad(current)}`]
}

function dropFault({ drop, dropLimit }: CableLoading): readonly string[] {
  return drop === undefined || dropLimit === undefined || reaches(dropLimit, drop)
    ? []
    : [`loses ${formatShare(drop, 3)}, at most ${formatShare(dropLimit, 3)} is allowed`]
}
