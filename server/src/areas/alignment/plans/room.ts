import { formatLength, isFormattedAsZero } from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import { listed } from '../../common/listed.ts'
import type { Hardware } from './hardware.ts'
import type { BedFoot, CorrectedFoot } from './steps.ts'

/** What sets the heights of the feet, where the bed says. */
type SetBy = 'stud-and-nuts' | 'shims' | undefined

export type TravelFact = 'travel-up' | 'travel-down' | 'hole-clearance'

/** Feet that go this way though the job does not say how far they can, and how far the farthest goes, m. */
interface UnstatedTravel {
  readonly way: TravelFact
  readonly feet: readonly string[]
  readonly most: number
}

/** How far a foot goes each way, and how far it can. */
const travelFacts: Readonly<
  Record<
    TravelFact,
    { readonly goes: (f: CorrectedFoot) => number; readonly can: (f: BedFoot) => number | undefined }
  >
> = {
  'travel-up': { goes: ({ moved }) => moved, can: ({ up }) => up },
  'travel-down': { goes: ({ moved }) => -moved, can: ({ down }) => down },
  'hole-clearance': { goes: ({ slid }) => Math.abs(slid), can: ({ sideways }) => sideways },
}

/** Ways that steps go though the job does not say how far the feet can. What lies under a foot is what lets it down on shims. */
export function unstatedTravel(
  feet: readonly CorrectedFoot[],
  adjuster: SetBy,
  { feet: stands }: Hardware,
  enough: (way: TravelFact, length: number) => boolean,
): readonly UnstatedTravel[] {
  return (['travel-up', 'travel-down', 'hole-clearance'] as const)
    .filter((way) => adjuster !== 'shims' || way !== 'travel-down')
    .map((way): UnstatedTravel => {
      const { goes, can } = travelFacts[way]
      const found = feet.filter((foot, i) => {
        const stand = stands[i]
        return foot.step.by !== 'none' && stand && can(stand) === undefined && !enough(way, goes(foot))
      })
      return { way, feet: found.map(({ name }) => name), most: Math.max(0, ...found.map(goes)) }
    })
    .filter(({ feet: found }) => found.length > 0)
}

const hardwareAssumed = (way: TravelFact, adjuster: SetBy): string =>
  way === 'hole-clearance'
    ? 'the holes let the feet slide'
    : adjuster === 'shims'
      ? 'the bolts are long enough'
      : 'the studs have enough thread'

export const travelDirection: Readonly<Record<TravelFact, string>> = {
  'travel-up': 'up',
  'travel-down': 'down',
  'hole-clearance': 'sideways',
}

/** What a plan takes for granted of the room that its steps need. */
export const roomAssumed = (
  feet: readonly CorrectedFoot[],
  adjuster: SetBy,
  hardware: Hardware,
  system: UnitSystem,
): readonly string[] =>
  unstatedTravel(
    feet,
    adjuster,
    hardware,
    (_, length) => length <= 0 || isFormattedAsZero(length, system),
  ).map(
    ({ way, feet: found, most }) =>
      `${hardwareAssumed(way, adjuster)}: ${way} is not stated${found.length < feet.length ? ` at ${listed(found)}` : ''}, and the plan needs at most ${formatLength(most, system)} ${travelDirection[way]}`,
  )
