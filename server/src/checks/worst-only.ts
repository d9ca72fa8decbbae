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
  const worst = new Map<string, Finding>()
  const all = new Map<string, Finding[]>()
  for (const finding of found) {
    const { check, size = 0 } = finding
    if (!worstOnly.has(check)) continue
    const alike = all.get(check)
    if (alike) alike.push(finding)
    else all.set(check, [finding])
    if (size > (worst.get(check)?.size ?? -1)) worst.set(check, finding)
  }
  if (worst.size === 0) return found
  return found.flatMap((finding) => {
    const kept = worst.get(finding.check)
    if (!kept) return finding
    return kept === finding ? merged(kept, all.get(kept.check) ?? []) : [] // so this comes once a check
  })
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
