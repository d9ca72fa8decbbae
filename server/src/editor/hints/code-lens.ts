import { briefState, briefVerdict, shortChange } from '../../areas/alignment/plans/brief-words.ts'
import { type Correction, correctionOf } from '../../areas/alignment/plans/correction.ts'
import { lastReading } from '../../areas/alignment/plans/moves.ts'
import { changeOf } from '../../areas/alignment/plans/reading-change.ts'
import { type Block, childrenOf, type Section } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import type { Lookup } from '../../store/lookup.ts'
import { sectionPlan } from '../../store/section-plan.ts'
import { lookupFrom } from '../../store/store.ts'
import type { Span } from '../../syntax/tree.ts'

/** A line over a block. */
export interface Lens {
  readonly span: Span
  readonly words: string
}

/** What stands over the drives of a section and their readings. Over a drive its state, over a reading what changed since the one before, and over both
 * the way to the plan. The verdict of a reading stands over it only while no finding in it says the same. */
export const codeLenses: (view: View, section: Section) => readonly Lens[] = sectionPlan(({ blocks }, view) =>
  blocks.filter(({ kind }) => kind === 'drive').flatMap((drive) => overDrive(lookupFrom(drive, view))),
)

const over = ({ node }: Block, words: readonly string[]): readonly Lens[] =>
  words.map((said) => ({ span: node.headSpan, words: said }))

function overDrive({ block: drive, from }: Lookup): readonly Lens[] {
  const last = lastReading(drive)
  const state = last && worked(from(last))
  return [
    ...over(drive, state ? [`${last?.name ?? 'Last reading'}: ${briefState(state)}`, 'Plan'] : []),
    ...childrenOf(drive, 'reading').flatMap((reading) => over(reading, wordsOver(from(reading)))),
  ]
}

/** Nothing where the reading cannot be worked out: the findings say why. */
function worked(reading: Lookup): Correction | undefined {
  const outcome = correctionOf(reading.block, reading)
  return outcome.ok ? outcome.value : undefined
}

const capital = (text: string): string => text.replace(/^./, (c) => c.toUpperCase())

/** What changed comes last: it may be too long for the line. */
function wordsOver(lookup: Lookup): readonly string[] {
  const found = worked(lookup)
  if (!found) return []
  const change = changeOf(lookup.block, lookup)
  const isWithin = found.verdict === 'within' && !found.contradictory
  return [
    ...(isWithin ? [capital(briefVerdict(found, lookup.system))] : []),
    'Plan',
    ...(change ? [capital(shortChange(change, lookup.system))] : []),
  ]
}
