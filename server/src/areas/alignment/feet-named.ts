import type { Finding, Reported } from '../../checks/check.ts'
import type { Fix } from '../../checks/fix.ts'
import { replace, useNearest } from '../../checks/fix-text.ts'
import { childrenOf, type Place } from '../../job/model.ts'
import { elide } from '../../quantity/elide.ts'
import { nearest } from '../../quantity/nearest.ts'
import type { Lookup } from '../../store/lookup.ts'
import { feetTooMany } from './plans/feet.ts'

/** The feet of the bed by name; undefined where there are none or too many, or where one whose name could not be read may be the one that is meant. */
function feetOf(lookup: Lookup): readonly string[] | undefined {
  const bed = lookup.near('bed')
  if (bed && feetTooMany(bed)) return undefined
  const feet = bed ? childrenOf(bed, 'foot') : []
  const names = feet.flatMap(({ name }) => name ?? [])
  return names.length === 0 || names.length < feet.length ? undefined : names
}

/** Those of the names that no foot of the bed goes by. */
export function unknownFeet(
  named: readonly { readonly name: string; readonly at: Place }[],
  lookup: Lookup,
): readonly Reported[] {
  const feet = feetOf(lookup)
  if (!feet) return []
  return named
    .filter(({ name }) => !feet.includes(name))
    .map(({ name, at }) => {
      const close = nearest(name, feet)
      return {
        at,
        message: `The bed has no foot called ${elide(name)}.`,
        detail: `Its ${feet.length === 1 ? 'only foot is' : 'feet are'} ${feet.join(', ')}.`,
        todo:
          close === undefined ? 'Name the foot as the bed does.' : `Write ${close} if you mean that foot.`,
        found: name,
        ...(close !== undefined && { data: { nearest: close } }),
      }
    })
}

/** The nearest foot, then each that is not named yet. */
export const otherFeet = (
  { at, data }: Finding,
  lookup: Lookup | undefined,
  isNamed: (name: string) => boolean,
): readonly Fix[] => [
  ...useNearest(at, data?.nearest),
  ...((lookup && feetOf(lookup)) ?? [])
    .filter((name) => name !== data?.nearest && !isNamed(name))
    .map((name) => ({ title: `Write ${name}`, edits: [replace(at, name)] })),
]
