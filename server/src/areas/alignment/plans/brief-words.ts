import { formatLength, formatOfLimit, formatTogether } from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import type { Correction } from './correction.ts'
import type { JudgedFigure } from './judged.ts'
import type { MovedInWords } from './moved-in-words.ts'
import type { ReadingChange } from './reading-change.ts'

const verdicts = { within: 'within', outside: 'outside', undecided: 'undecided' } as const

export const verdictWords = {
  within: 'within its limits',
  outside: 'outside its limits',
  undecided: 'undecided',
} as const

export const ofLimit = ({ value, limit }: JudgedFigure, system: UnitSystem): string =>
  formatOfLimit(value.value, limit, system)

/** A reading in a few words: `outside: 0.26, limit 0.10 mm`. The offset is named where it decides. */
export function briefVerdict(c: Correction, system: UnitSystem): string {
  if (c.contradictory) return 'readings disagree: read again'
  const { gapVariation, offset, verdict } = c
  if (verdict === 'undecided' && gapVariation.verdict === 'within' && !offset)
    return 'undecided: offset not read'
  const byOffset = offset?.verdict === verdict && gapVariation.verdict !== verdict
  return `${verdicts[verdict]}: ${byOffset ? `offset ${ofLimit(offset, system)}` : ofLimit(gapVariation, system)}`
}

/** How a drive stands by a reading, without its figures: those are said at the reading. */
export function briefState({ contradictory, movedSince, verdict }: Correction): string {
  if (movedSince) return 'moved since, read again'
  return contradictory ? 'readings disagree, read again' : verdictWords[verdict]
}

/** `gap variation 0.26 → 0.03 mm`, `gap variation still 0.03 mm`. */
function changed(what: string, [before, now]: readonly [number, number], system: UnitSystem): string {
  const still = formatLength(now, system)
  return formatLength(before, system) === still
    ? `${what} still ${still}`
    : `${what} ${formatTogether([before, now], system, ' → ')}`
}

/** Feet that did alike together: `aft-port, aft-stbd up 1 flat`. */
export function formatMoved(moved: readonly MovedInWords[]): readonly string[] {
  const feet = new Map<string, string[]>()
  for (const { foot, words } of moved) feet.set(words, [...(feet.get(words) ?? []), foot])
  return [...feet].map(([words, alike]) => `${alike.join(', ')} ${words}`)
}

const changedFaces = ({ gapVariation, offset }: ReadingChange, system: UnitSystem): readonly string[] => [
  changed('gap variation', gapVariation, system),
  ...(offset ? [changed('offset', offset, system)] : []),
]

/** Short enough for a line over a reading: `since dry-1: gap variation 0.26 → 0.02 mm, 2 feet moved`. The offset is named where the gap
 * variation stayed. */
export function shortChange(change: ReadingChange, system: UnitSystem): string {
  const faces = changedFaces(change, system)
  const faceChange = faces.find((words) => words.includes(' → ')) ?? faces[0]
  const feet = new Set(change.moved.map(({ foot }) => foot)).size
  return `since ${change.since}: ${faceChange}, ${feet === 0 ? 'no foot' : feet === 1 ? '1 foot' : `${feet} feet`} moved`
}

const asIs = (name: string): string => name

/** `named`: how names are shown. `since dry-1: gap variation 0.26 → 0.02 mm; aft-port, aft-stbd up 1 flat`. */
export function briefChange(
  change: ReadingChange,
  system: UnitSystem,
  named: (name: string) => string = asIs,
): string {
  const { since, moved, launched } = change
  return `since ${named(since)}: ${[
    ...changedFaces(change, system),
    ...(launched === undefined ? [] : [launched ? 'now afloat' : 'now ashore']),
    ...formatMoved(moved.map(({ foot, words }) => ({ foot: named(foot), words }))),
    ...(moved.length === 0 ? ['no foot moved'] : []),
  ].join('; ')}`
}
