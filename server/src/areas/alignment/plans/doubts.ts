import { type Block, childrenOf } from '../../../job/model.ts'
import { blockNear, idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import { blockPlan } from '../../../store/plan.ts'
import { lastReading } from './moves.ts'

/** Why no steps are given though the machine is not within its limits, the first that holds. `errors`: something the plan depends on is
 * written wrong. `finding`: something was found in it that is to be fixed or accepted first. `unsure`: nothing is proven and U is
 * larger than every move. `far-off`: rough alignment comes first. */
export type Withheld =
  | 'moved-since'
  | 'order-unknown'
  | 'doubled-names'
  | 'later-reading'
  | 'errors'
  | 'finding'
  | 'soft-foot'
  | 'pilot-engaged'
  | 'another-effect'
  | 'contradictory'
  | 'unsure'
  | 'far-off'

/** Something in the log or in the names that leaves open what a plan would depend on. */
export interface Doubt {
  readonly type: Extract<
    Withheld,
    'order-unknown' | 'doubled-names' | 'later-reading' | 'soft-foot' | 'pilot-engaged'
  >
  readonly words: string
}

const doubled = (kind: 'reading' | 'foot') =>
  blockPlan((parent: Block): readonly string[] => {
    const [seen, more] = [new Set<string>(), new Set<string>()]
    for (const { name } of childrenOf(parent, kind))
      if (name !== undefined) (seen.has(name) ? more : seen).add(name)
    return [...more]
  })
const readingsTwice = doubled('reading')
const feetTwice = doubled('foot')

const undatedIn = blockPlan((drive: Block): readonly BlockId[] => {
  const readings = childrenOf(drive, 'reading')
  return readings
    .filter(({ unread, facts }) => unread.has('taken') || (readings.length > 1 && !facts.has('taken')))
    .map(idOf)
})

/** More of one kind are not told one by one: each reading of a long log has them all. */
const maxDoubtsPerKind = 10

/** The words for each, and for those beyond the first few together. */
const limitedDoubts = <T>(
  all: readonly T[],
  type: Doubt['type'],
  each: (one: T) => string,
  rest: (count: number) => string,
): readonly Doubt[] => [
  ...all.slice(0, maxDoubtsPerKind).map((one) => ({ type, words: each(one) })),
  ...(all.length > maxDoubtsPerKind ? [{ type, words: rest(all.length - maxDoubtsPerKind) }] : []),
]

/** Whether a date is written that is none. */
const isWrittenWrong = ({ unread, blanks }: Block): boolean => unread.has('taken') && !blanks.has('taken')

/** What leaves open which reading counts, and what its names stand for. */
export function doubtsAbout(reading: Block, bed: Block | undefined): readonly Doubt[] {
  const drive = reading.parent
  const undated = drive ? undatedIn(drive).map((id) => blockNear(drive, id)) : []
  const last = drive && lastReading(drive)
  const later = undated.length === 0 && last && last !== reading ? last : undefined
  const twice = [
    ...(drive ? readingsTwice(drive) : []).map((name) => `Two readings are called ${name}`),
    ...(bed ? feetTwice(bed) : []).map((name) => `Two feet of the bed are called ${name}`),
  ]
  return [
    ...limitedDoubts(
      undated,
      'order-unknown',
      (one) =>
        `The date of the reading ${one.name ?? ''} ${isWrittenWrong(one) ? 'cannot be read' : 'is not known'}, so the last reading is not known either. Write it first.`,
      (count) => `The dates of ${count} more readings are not known either.`,
    ),
    ...limitedDoubts(
      twice,
      'doubled-names',
      (names) => `${names}, so a name does not say which one. Give each its own name first.`,
      (count) => `${count} more names are used twice.`,
    ),
    ...(later
      ? [
          {
            type: 'later-reading',
            words: `A later reading counts: ${later.name ?? ''}. Use that one; this one gives no moves.`,
          } as const,
        ]
      : []),
  ]
}
