import { getOrInsert } from '../common/get-or-insert.ts'
import { greatest } from '../quantity/extremes.ts'
import type { Finding } from './check.ts'

/** So many other places are named: nobody reads a hundred. */
const mostNamed = 20

interface Merged {
  readonly others: readonly Finding[]
  readonly finding: Finding
}

/** What was made of the worst finding last: the same as long as it names the same others. */
const lastMerged = new WeakMap<Finding, Merged>()

/** Of a check that shows only the worst of a file, that one, with where else it was found. */
export function worstOf(found: readonly Finding[], worstOnly: ReadonlySet<string>): readonly Finding[] {
  const byCheck = new Map<string, Finding[]>()
  for (const finding of found)
    if (worstOnly.has(finding.check)) getOrInsert(byCheck, finding.check, (): Finding[] => []).push(finding)
  if (byCheck.size === 0) return found
  const shown = new Map([...byCheck.values()].map((alike) => [worstAmong(alike), alike]))
  return found.flatMap((finding) => {
    const alike = shown.get(finding)
    if (alike) return merged(finding, alike)
    return worstOnly.has(finding.check) ? [] : finding
  })
}

/** The first of those that are worst. */
const worstAmong = (alike: readonly Finding[]): Finding | undefined => {
  const most = greatest(alike.map(({ size = 0 }) => size))
  return alike.find(({ size = 0 }) => size === most)
}

function merged(worst: Finding, alike: readonly Finding[]): Finding {
  const others = alike.filter((other) => other !== worst)
  if (others.length === 0) return worst
  const before = lastMerged.get(worst)
  if (before && areSame(before.others, others)) return before.finding
  const finding = naming(worst, others)
  lastMerged.set(worst, { others, finding })
  return finding
}

/** How many there are and which are named is all that shows of the others. */
const areSame = (a: readonly Finding[], b: readonly Finding[]): boolean =>
  a.length === b.length && b.slice(0, mostNamed).every((other, i) => other === a[i])

function naming(worst: Finding, others: readonly Finding[]): Finding {
  const more = others.length - mostNamed
  return {
    ...worst,
    related: [
      ...(worst.related ?? []),
      ...others.slice(0, mostNamed).map(({ at, message }) => ({ at, message })),
    ],
    ...(more > 0 && {
      detail:
        `${worst.detail ?? ''} ${more === 1 ? '1 more place is' : `${more} more places are`} not listed.`.trim(),
    }),
  }
}
