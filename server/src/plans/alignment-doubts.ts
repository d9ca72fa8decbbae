import { type Block, childrenOf } from '../job/model.ts'
import { once } from '../syntax/once.ts'
import { lastReading } from './alignment-moves.ts'

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

const doubled = (blocks: readonly Block[]): readonly string[] => {
  const [once, more] = [new Set<string>(), new Set<string>()]
  for (const { name } of blocks) if (name !== undefined) (once.has(name) ? more : once).add(name)
  return [...more]
}

const readingsTwice = once((drive: Block) => doubled(childrenOf(drive, 'reading')))

/** What leaves open which reading counts, and what its names stand for. */
export function doubtsAbout(reading: Block, bed: Block | undefined): readonly Doubt[] {
  const drive = reading.parent
  const readings = drive ? childrenOf(drive, 'reading') : []
  const undated = readings.filter(({ unread }) => unread.has('taken'))
  const last = drive && lastReading(drive)
  const later = undated.length === 0 && last && last !== reading ? last : undefined
  return [
    ...undated.map(
      ({ name }): Doubt => ({
        type: 'order-unknown',
        words: `When the reading ${name ?? ''} was taken could not be read, so which reading is the last is not known. Correct that first.`,
      }),
    ),
    ...[
      ...(drive ? readingsTwice(drive) : []).map((name) => `Two readings are called ${name}`),
      ...doubled(bed ? childrenOf(bed, 'foot') : []).map((name) => `Two feet of the bed are called ${name}`),
    ].map(
      (said): Doubt => ({
        type: 'doubled-names',
        words: `${said}: which one is meant cannot be told. Give each a name of its own first.`,
      }),
    ),
    ...(later
      ? [
          {
            type: 'later-reading',
            words: `A later reading, ${later.name ?? ''}, exists and counts: go by that. No moves are given from this one.`,
          } as const,
        ]
      : []),
  ]
}
