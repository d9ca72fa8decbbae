import type { UnitSystem } from '../quantity/kinds.ts'
import { isSaidAsNothing } from '../quantity/said.ts'
import { expanded } from '../quantity/uncertainty.ts'
import type { Correction } from './alignment.ts'
import { roomToMeasure } from './alignment-room.ts'
import { listed } from './listed.ts'
import { type CorrectedFoot, stepOf } from './steps.ts'

const way = (height: number): 'up' | 'down' => (height < 0 ? 'down' : 'up')

/** Feet that go the same way, or stay, while each by itself would go another. */
function against(c: Correction, system: UnitSystem): ReadonlyMap<string, readonly CorrectedFoot[]> {
  const groups = new Map<string, CorrectedFoot[]>()
  const { thread } = c.hardware ?? {}
  for (const foot of c.feet) {
    const { step, moved, vertical } = foot
    if (step.by === 'none' || step.by === 'hand' || isSaidAsNothing(vertical.value, system)) continue
    const stays = isSaidAsNothing(moved, system)
    // A foot that stays because it is nearer so, or as near as anyone can tell, needs no reason.
    const finest = step.by === 'nut' && thread ? stepOf({ by: 'nut', thread, partsOfFlat: 1 }) : 0
    const slight = Math.abs(vertical.value) <= Math.max(finest, expanded(vertical))
    if (stays ? slight : way(moved) === way(vertical.value)) continue
    const words = `${stays ? 'stay' : way(moved)} ${way(vertical.value)}`
    groups.set(words, [...(groups.get(words) ?? []), foot])
  }
  return groups
}

function sayAgainst(c: Correction, system: UnitSystem): readonly string[] {
  const why = c.predicted?.provable
    ? 'with the steps that the feet can make, this serves the machine as a whole best'
    : 'travel and steps of the feet leave this the best for the machine as a whole'
  return [...against(c, system)].map(([words, feet]) => {
    const [does, wanted] = words.split(' ')
    const one = feet.length === 1
    const now = does === 'stay' ? (one ? 'stays' : 'stay') : `${one ? 'goes' : 'go'} ${does}`
    return `${listed(feet.map(({ name }) => name))} ${now} although by ${one ? 'itself it' : 'themselves they'} would go ${wanted}: ${why}.`
  })
}

/** What to say beside the steps: what has to be measured before, and why a foot goes another way than it would by itself. */
export const notesOnSteps = (c: Correction, system: UnitSystem): readonly string[] =>
  c.withheld || c.verdict === 'within' ? [] : [...roomToMeasure(c, system), ...sayAgainst(c, system)]
