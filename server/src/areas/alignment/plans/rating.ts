import type { Block } from '../../../job/model.ts'
import type { Uncertain } from '../../../quantity/uncertainty.ts'
import type { Lookup } from '../../../store/lookup.ts'
import type { Correction } from './correction.ts'
import { lastReading } from './moves.ts'
import { replacedBy, stateOf } from './reading-history.ts'

/** Angle between the axes, rad; counted from the target where there is one. */
export const angleOf = ({ gapVariation: { value }, gaugeDiameter }: Correction): Uncertain => ({
  value: value.value / gaugeDiameter,
  standard: value.standard / gaugeDiameter,
})

/** Whether a later reading says more of how the machine runs: how it stood before it was aligned bends nothing in service. A later one ashore says nothing
 * of how it runs afloat. */
export function isPast(reading: Block, lookup: Lookup): boolean {
  const isLast = !reading.parent || lastReading(reading.parent) === reading
  return !isLast && (stateOf(reading, lookup)?.afloat === 'dry' || replacedBy(reading, lookup) !== undefined)
}
