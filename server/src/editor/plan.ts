import type { Finding } from '../checks/check.ts'
import { trustedCorrection } from '../checks/plan-trust.ts'
import { lookupFrom } from '../job/lookup.ts'
import type { Block, Section } from '../job/model.ts'
import type { View } from '../job/per-section.ts'
import { logUpTo } from '../plans/alignment-log.ts'
import { lastReading } from '../plans/alignment-moves.ts'
import { briefChange } from '../plans/brief-words.ts'
import { planText } from '../plans/plan-text.ts'
import { changeOf } from '../plans/reading-change.ts'
import { contains } from '../syntax/tree.ts'

/** The plan of the reading a place stands in, else of the last reading of its drive, as plain text: what to do at each foot, or why that cannot
 * be said. Undefined outside a drive. `findings`: what is found in the file as it stands now. */
export function planAt(
  { analysis, file }: View,
  section: Section,
  offset: number,
  findings: readonly Finding[] = [],
): string | undefined {
  const drive = analysis
    .bound(file, section)
    .blocks.find(({ kind, node }) => kind === 'drive' && contains(node.span, offset))
  if (!drive) return undefined
  const reading = drive.children.find(isReadingAt(offset)) ?? lastReading(drive)
  if (!reading) return `${drive.path}: no reading yet, so there is nothing to plan from.`
  const lookup = lookupFrom(reading, analysis.scope(file))
  const outcome = trustedCorrection(reading, lookup, { file, findings })
  if (!outcome.ok) return `${reading.path}: ${outcome.fault.words}`
  const change = changeOf(reading, lookup)
  return [
    planText(outcome.value, logUpTo(reading, lookup), lookup.system),
    ...(change ? [`Changed ${briefChange(change, lookup.system)}.`] : []),
  ].join('\n\n')
}

const isReadingAt =
  (offset: number) =>
  ({ kind, node }: Block): boolean =>
    kind === 'reading' && contains(node.span, offset)
