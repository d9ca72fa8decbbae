import type { FixGround } from '../../checks/check.ts'
import type { Fix } from '../../checks/fix.ts'
import { addAfter, freeName, newValue } from '../../checks/fix-text.ts'
import { factOf } from '../../job/model.ts'
import { formatSi } from '../../quantity/format.ts'
import type { Lookup } from '../../store/lookup.ts'
import { fittingRating, isOneFuseEnough } from './plans/cable-protection.ts'
import type { ConductorSize } from './plans/conductor-sizes.ts'
import { heatAround } from './plans/fuse-ambient.ts'
import { sizesTried } from './plans/sizes-tried.ts'

/** The smallest conductor that is made, of the system the cable is in and larger than it has, that passes: each tried in the plan. */
function smallestSize(lookup: Lookup): ConductorSize | undefined {
  const now = factOf(lookup.block, 'cable.conductor')?.value
  const last = now === undefined ? undefined : sizesTried(lookup, now).at(-1)
  return last?.faults.length === 0 ? last : undefined
}

/** A larger conductor for the cable, where it says its conductor itself. */
export function largerConductor({ block, lookup }: FixGround): readonly Fix[] {
  const conductor = block && factOf(block, 'cable.conductor')
  if (!conductor || conductor.origin || !lookup) return []
  const size = smallestSize(lookup)
  return size
    ? [
        {
          title: `Use ${size.shown}`,
          edits: [newValue(block.section, conductor.node, size.written)],
          preferred: true,
        },
      ]
    : []
}

/** The fitting rating for the fuse at the finding, where it says its rating itself. */
export function fitRating({ block, lookup }: FixGround): readonly Fix[] {
  const rating = block && factOf(block, 'protection.rating')
  if (!rating || rating.origin || !factOf(block, 'protection.in') || !lookup) return []
  const amps = fittingRating(lookup.referred('in'), lookup, heatAround(lookup.block))
  return amps === undefined
    ? []
    : [
        {
          title: `Use ${formatSi(amps, 'current')}`,
          edits: [newValue(block.section, rating.node, formatSi(amps, 'current'))],
          preferred: true,
        },
      ]
}

/** A fuse of the fitting rating in the cable at the finding, where one is enough. */
export function addFuse({ block, lookup }: FixGround): readonly Fix[] {
  if (!lookup || !isOneFuseEnough(lookup.block, lookup)) return []
  const amps = fittingRating(lookup.block, lookup)
  if (!block?.name || amps === undefined) return []
  const name = freeName(`${block.name}-fuse`, (taken) => lookup.named(taken) !== undefined)
  const lines = [
    `protection ${name} {`,
    '  kind:       fuse',
    `  rating:     ${formatSi(amps, 'current')}`,
    `  in:         ${block.name}`,
    '  at:         ?',
    '  interrupts: ?',
    '  voltage:    ?',
    '}',
  ]
  return [
    {
      title: `Add a fuse of ${formatSi(amps, 'current')}`,
      edits: [addAfter(block, lines.join('\n'))],
      preferred: true,
    },
  ]
}
