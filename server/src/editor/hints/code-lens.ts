import { briefState, briefVerdict, shortChange } from '../../areas/alignment/plans/brief-words.ts'
import { type Correction, correctionOf } from '../../areas/alignment/plans/correction.ts'
import { lastReading } from '../../areas/alignment/plans/moves.ts'
import { changeOf } from '../../areas/alignment/plans/reading-change.ts'
import { lookupFrom } from '../../job/lookup.ts'
import { type Block, childrenOf, type Section } from '../../job/model.ts'
import { perSection, type View } from '../../job/per-section.ts'
import type { Scope } from '../../job/scope.ts'
import type { Span } from '../../syntax/tree.ts'

/** A line over a block. */
export interface Lens {
  readonly span: Span
  readonly words: string
}

/** What stands over the drives of a section and their readings. Over a drive its state, over a reading what changed since the one before, and over both
 * the way to the plan. The verdict of a reading stands over it only while no finding in it says the same. */
export const codeLenses: (view: View, section: Section) => readonly Lens[] = perSection(({ blocks }, scope) =>
  blocks.filter(({ kind }) => kind === 'drive').flatMap((drive) => overDrive(drive, scope)),
)

const over = ({ node }: Block, words: readonly string[]): readonly Lens[] =>
  words.map((said) => ({ span: node.headSpan, words: said }))

function overDrive(drive: Block, scope: Scope): readonly Lens[] {
  const last = lastReading(drive)
  const state = last && worked(last, scope)
  return [
    ...over(drive, state ? [`${last?.name ?? 'Last reading'}: ${briefState(state)}`, 'Plan'] : []),
    ...childrenOf(drive, 'reading').flatMap((reading) => over(reading, saidOf(reading, scope))),
  ]
}

/** Nothing where the reading cannot be worked out: the findings say why. */
function worked(reading: Block, scope: Scope): Correction | undefined {
  const outcome = correctionOf(reading, lookupFrom(reading, scope))
  return outcome.ok ? outcome.value : undefined
}

const capital = (text: string): string => text.replace(/^./, (c) => c.toUpperCase())

/** What changed comes last: it may be too long for the line. */
function saidOf(reading: Block, scope: Scope): readonly string[] {
  const found = worked(reading, scope)
  if (!found) return []
  const lookup = lookupFrom(reading, scope)
  const change = changeOf(reading, lookup)
  const isWithin = found.verdict === 'within' && !found.contradictory
  return [
    ...(isWithin ? [capital(briefVerdict(found, lookup.system))] : []),
    'Plan',
    ...(change ? [capital(shortChange(change, lookup.system))] : []),
  ]
}
