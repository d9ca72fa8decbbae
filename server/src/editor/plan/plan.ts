import { trustedCorrection } from '../../areas/alignment/plan-trust.ts'
import { briefChange } from '../../areas/alignment/plans/brief-words.ts'
import { logUpTo } from '../../areas/alignment/plans/log.ts'
import { lastReading } from '../../areas/alignment/plans/moves.ts'
import { planHeading } from '../../areas/alignment/plans/plan-heading.ts'
import { planText } from '../../areas/alignment/plans/plan-text.ts'
import { changeOf } from '../../areas/alignment/plans/reading-change.ts'
import type { Finding } from '../../checks/check.ts'
import { identityOf } from '../../job/identity.ts'
import type { Block, Section } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import { lookupFrom } from '../../store/store.ts'
import { harmlessLines } from '../../syntax/harmless.ts'
import { contains } from '../../syntax/tree.ts'

/** The drives of a file, in order. */
export const drivesOf = ({ analysis, file }: View): readonly Block[] =>
  analysis.blocks(file).filter(({ kind }) => kind === 'drive')

/** What a plan at a place is of: the reading there, else the drive. Undefined outside a drive. */
export function plannedAt({ analysis, file }: View, section: Section, offset: number): Block | undefined {
  const holds = ({ node }: Block) => contains(node.span, offset)
  const drive = analysis.bound(file, section).blocks.find((block) => block.kind === 'drive' && holds(block))
  return drive?.children.find((block) => block.kind === 'reading' && holds(block)) ?? drive
}

/** The drive or the reading that goes by this path: `port`, `port.dry-1`. */
export const plannedBy = (view: View, path: string): Block | undefined =>
  drivesOf(view)
    .flatMap((drive) => [drive, ...drive.children.filter(({ kind }) => kind === 'reading')])
    .find((block) => block.path === path)

/** The plan of a reading, or of the last reading of a drive, as plain text: what to do at each foot, or why that cannot be said. `findings`: what
 * is found in the file as it stands now. */
export function planOf({ analysis, file }: View, planned: Block, findings: readonly Finding[] = []): string {
  const reading = planned.kind === 'reading' ? planned : lastReading(planned)
  if (!reading) return `${planned.path}: no reading yet, so no plan can be made.`
  const lookup = lookupFrom(reading, { analysis, file })
  const outcome = trustedCorrection(lookup.block, lookup, { file, findings })
  if (!outcome.ok) return `${reading.path}: ${outcome.fault.words}`
  const change = changeOf(lookup.block, lookup)
  return [
    planText(outcome.value, logUpTo(lookup.block, lookup), lookup.system),
    ...(change ? [`Changed ${briefChange(change, lookup.system)}.`] : []),
  ].join('\n\n')
}

/** A file that is not saved yet has a name at most, and no place. */
const formatPath = (path: string): string =>
  path.startsWith('untitled:') ? `${path.replace(/^untitled:(?:.*\/)?/, '')} (not saved)` : path

/** The same with the vessel, job, revision, day and file above it. */
export const planSheet = (
  view: View,
  planned: Block,
  { findings, today }: { readonly findings: readonly Finding[]; readonly today: string },
): string =>
  harmlessLines(
    [
      planHeading({
        job: identityOf(view.analysis.blocks(view.file)),
        today,
        file: formatPath(view.file.path),
      }),
      planOf(view, planned, findings),
    ].join('\n\n'),
  )
