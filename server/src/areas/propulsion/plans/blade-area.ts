import { kellerAreaRatio } from '../../../engineering/propulsion/cavitation.ts'
import type { Block } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { type Outcome, ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { attempt, Missing, must } from './attempt.ts'
import { serviceOf, waterSaid } from './hull-input.ts'
import { powerOfFile } from './power.ts'

/** Blade area that is there, and that is needed. */
interface BladeArea {
  readonly stated: number
  readonly needed: number
  /** Where it is needed, N and m/s. */
  readonly thrust: number
  readonly boatSpeed: number
  readonly assumptions: readonly string[]
}

/** The least blade area that keeps a propeller from cavitating at a thrust, N. Throws what is missing. */
export function neededArea(
  propeller: Block,
  { thrust, screws }: { readonly thrust: number; readonly screws: number },
  file: FileLookup,
): number {
  const { density, celsius } = waterSaid(serviceOf(file))
  return kellerAreaRatio({
    thrust,
    diameter: must(statedFact(propeller, 'propeller.diameter'), 'the diameter of the propeller'),
    blades: must(statedFact(propeller, 'propeller.blades'), 'the number of blades'),
    depth: must(statedFact(propeller, 'propeller.depth'), 'the depth of the propeller'),
    density,
    celsius,
    screws,
  })
}

/** Against cavitation, where the propeller pushes hardest while the boat runs. */
export const bladeAreaOf = plan(
  (propeller: Block, lookup: Lookup): Outcome<BladeArea> =>
    attempt(() => {
      const drive = propeller.parent
      if (drive?.kind !== 'drive') throw new Missing('it is in no drive')
      const stated = must(
        statedFact(propeller, 'propeller.blade-area-ratio'),
        'the blade area of the propeller',
      )
      must(statedFact(propeller, 'propeller.depth'), 'the depth of the propeller')
      const power = lookup.ofFile(powerOfFile)
      if (!power.ok) return power
      const { table, drives, assumptions } = power.value
      const index = drives.indexOf(idOf(drive))
      const rows = [...(table.top ? [table.top] : []), ...table.asked, ...table.rows]
      const [hardest] = rows
        .flatMap((row) => {
          const thrust = row?.drives[index]?.thrust
          return row && thrust !== undefined ? [{ thrust, boatSpeed: row.boatSpeed }] : []
        })
        .toSorted((a, b) => b.thrust - a.thrust)
      if (!hardest) throw new Missing('no speed of the boat is stated, and no motor that gives one')
      return ok({
        stated,
        needed: neededArea(propeller, { thrust: hardest.thrust, screws: drives.length }, lookup),
        ...hardest,
        assumptions,
      })
    }),
)
