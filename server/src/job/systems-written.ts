import { memoizeByIdentity } from '../common/memoize-by-identity.ts'
import { kinds, type UnitSystem } from '../quantity/kinds.ts'
import { findUnit, type Unit, unitSystemOf } from '../quantity/units.ts'
import { blocksIn, type Item, withInside } from '../syntax/tree.ts'
import type { Section } from './model.ts'

/** Electric motors are rated in kilowatts in inch jobs too, and distances at sea are nautical miles in both. */
const isInBoth = ({ kind, name }: Unit): boolean => kind === 'power' || name === 'nmi'

/** The unit systems that amounts are written in, of the kinds that differ from one system to the other. */
function systemsIn(items: readonly Item[], found: Set<UnitSystem>): Set<UnitSystem> {
  for (const item of items) {
    if (item.type === 'block') systemsIn(item.items, found)
    if (item.type !== 'fact') continue
    for (const part of item.entries.flatMap(({ parts }) => parts.flatMap(withInside))) {
      const unit = 'unit' in part && part.unit ? findUnit(part.unit.text) : undefined
      if (!unit) continue
      const { metric, inch } = kinds[unit.kind].shown
      if (metric !== inch && !isInBoth(unit)) found.add(unitSystemOf(unit))
    }
  }
  return found
}

/** Kept for each section, so that a keystroke looks at no more than its own. */
export const systemsWritten = memoizeByIdentity(
  (section: Section): ReadonlySet<UnitSystem> => systemsIn(section.parsed.tree.items, new Set()),
)

/** The same of its readings alone. */
export const systemsOfReadings = memoizeByIdentity((section: Section): ReadonlySet<UnitSystem> => {
  const found = new Set<UnitSystem>()
  for (const block of blocksIn(section.parsed.tree.items))
    if (block.kind.text === 'reading') systemsIn(block.items, found)
  return found
})
