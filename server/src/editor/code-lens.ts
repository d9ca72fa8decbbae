import { reaches } from '../engineering/compare.ts'
import { type Lookup, lookupFrom } from '../job/lookup.ts'
import { type Block, childrenOf, type Section } from '../job/model.ts'
import { perSection, type View } from '../job/per-section.ts'
import type { Scope } from '../job/scope.ts'
import { correctionOf } from '../plans/alignment.ts'
import { lastReading } from '../plans/alignment-moves.ts'
import { briefLoad, briefVerdict, shortChange } from '../plans/brief-words.ts'
import { cableLoading } from '../plans/cable-loading.ts'
import { changeOf } from '../plans/reading-change.ts'
import type { Span } from '../syntax/tree.ts'

/** A line over a block. */
export interface Lens {
  readonly span: Span
  readonly words: string
}

/** What stands over the drives of a section and their readings: the verdict, what changed since the reading before, and the way to the plan. */
export const codeLenses: (view: View, section: Section) => readonly Lens[] = perSection(({ blocks }, scope) =>
  blocks.filter(({ kind }) => kind === 'drive').flatMap((drive) => overDrive(drive, scope)),
)

function overDrive(drive: Block, scope: Scope): readonly Lens[] {
  const last = lastReading(drive)
  const said = last ? saidOf(last, lookupFrom(last, scope)) : []
  const [verdict, ...more] = said
  const lookup = lookupFrom(drive, scope)
  const overloads = childrenOf(drive, 'cable').flatMap((cable) => overloaded(cable, lookup.from(cable)))
  return [
    ...lenses(drive, verdict === undefined ? [] : [`${last?.name ?? 'The reading'} ${verdict}`]),
    ...[...overloads, ...more].map((words) => ({ span: drive.node.headSpan, words })),
    ...childrenOf(drive, 'reading').flatMap((reading) =>
      lenses(reading, (reading === last ? said : saidOf(reading, lookupFrom(reading, scope))).map(capital)),
    ),
  ]
}

/** The way to the plan behind the verdict: what comes after may be too long for the line. */
const lenses = ({ node }: Block, [verdict, ...more]: readonly string[]): readonly Lens[] =>
  (verdict === undefined ? [] : [verdict, 'Plan', ...more]).map((words) => ({ span: node.headSpan, words }))

const capital = (text: string): string => text.replace(/^./, (c) => c.toUpperCase())

/** The verdict, and what changed; nothing where the reading cannot be worked out: the findings say why. */
function saidOf(reading: Block, lookup: Lookup): readonly string[] {
  const outcome = correctionOf(reading, lookup)
  if (!outcome.ok) return []
  const change = changeOf(reading, lookup)
  return [
    briefVerdict(outcome.value, lookup.system),
    ...(change ? [capital(shortChange(change, lookup.system))] : []),
  ]
}

/** A cable that has to carry more than it can. */
function overloaded(cable: Block, lookup: Lookup): readonly string[] {
  const outcome = cableLoading(cable, lookup)
  if (!outcome.ok) return []
  const { carries = Number.POSITIVE_INFINITY, current } = outcome.value
  if (reaches(carries, current)) return []
  return [`${cable.name ?? 'Cable'} overloaded: ${briefLoad(outcome.value)}`]
}
