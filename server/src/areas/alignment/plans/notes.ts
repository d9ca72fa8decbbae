import { usualSlide } from '../../../engineering/usual-holes.ts'
import { formatLength, isFormattedAsZero } from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import { expanded } from '../../../quantity/uncertainty.ts'
import { listed } from '../../common/listed.ts'
import type { Correction } from './correction.ts'
import { type TravelFact, travelDirection, unstatedTravel } from './room.ts'
import { type CorrectedFoot, stepOf } from './steps.ts'

/** What usually stands out of a stud above its nut, in pitches. Common practice, no source. */
const usualThread = 2

/** What has to be measured first, because a step needs more room than is usual. */
function roomToMeasure(c: Correction, system: UnitSystem): readonly string[] {
  const { hardware } = c
  if (!hardware?.thread || c.withheld) return []
  const { pitch, diameter } = hardware.thread
  const slide = usualSlide(diameter)
  const usual = (way: TravelFact) => (way === 'hole-clearance' ? slide : usualThread * pitch)
  return unstatedTravel(c.feet, c.adjuster, hardware, (way, length) => length <= usual(way) + 1e-9).map(
    ({ way, feet, most }) =>
      `${listed(feet)} ${feet.length === 1 ? 'goes' : 'go'} ${travelDirection[way]} by ${formatLength(most, system)}${feet.length === 1 ? '' : ' at most'}. That is more than ${
        way === 'hole-clearance'
          ? `the usual hole for the stud allows (${formatLength(slide, system)} to either side)`
          : `usually stands out of a stud (two pitches, ${formatLength(usualThread * pitch, system)})`
      }. Measure first, and state ${way} of ${listed(feet)}.`,
  )
}

const upOrDown = (height: number): 'up' | 'down' => (height < 0 ? 'down' : 'up')

/** Feet that go the same way, or stay, while each by itself would go another. */
function against(c: Correction, system: UnitSystem): ReadonlyMap<string, readonly CorrectedFoot[]> {
  const groups = new Map<string, CorrectedFoot[]>()
  const { thread } = c.hardware ?? {}
  for (const foot of c.feet) {
    const { step, moved, vertical } = foot
    if (step.by === 'none' || step.by === 'hand' || isFormattedAsZero(vertical.value, system)) continue
    const stays = isFormattedAsZero(moved, system)
    // A foot that stays because it is nearer so, or as near as anyone can tell, needs no reason.
    const finest = step.by === 'nut' && thread ? stepOf({ by: 'nut', thread, partsOfFlat: 1 }) : 0
    const slight = Math.abs(vertical.value) <= Math.max(finest, expanded(vertical))
    if (stays ? slight : upOrDown(moved) === upOrDown(vertical.value)) continue
    const words = `${stays ? 'stay' : upOrDown(moved)} ${upOrDown(vertical.value)}`
    groups.set(words, [...(groups.get(words) ?? []), foot])
  }
  return groups
}

function formatAgainst(c: Correction, system: UnitSystem): readonly string[] {
  return [...against(c, system)].map(([words, feet]) => {
    const [does, wanted] = words.split(' ')
    const one = feet.length === 1
    const why =
      does === 'stay' && c.predicted?.provable
        ? `the other feet bring the machine within its limits without ${one ? 'it' : 'them'}`
        : 'with the travel and steps of the feet, this is best for the machine as a whole'
    const now = does === 'stay' ? (one ? 'stays' : 'stay') : `${one ? 'goes' : 'go'} ${does}`
    return `${listed(feet.map(({ name }) => name))} ${now}, although by ${one ? 'itself it' : 'themselves they'} would go ${wanted}: ${why}.`
  })
}

/** What to say beside the steps: what has to be measured before, and why a foot goes another way than it would by itself. */
export const notesOnSteps = (c: Correction, system: UnitSystem): readonly string[] =>
  c.withheld || c.verdict === 'within' ? [] : [...roomToMeasure(c, system), ...formatAgainst(c, system)]
