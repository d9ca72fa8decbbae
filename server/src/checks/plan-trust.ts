import { hasSection, rangeOf } from '../job/document.ts'
import type { JobFile } from '../job/files.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, childrenOf } from '../job/model.ts'
import { type CorrectionOutcome, correctionOf, withhold } from '../plans/alignment.ts'
import { slipOf } from '../plans/alignment-slip.ts'
import { contains } from '../syntax/tree.ts'
import { findKind } from '../vocabulary/index.ts'
import type { Finding } from './check.ts'

/** The job file a plan is made from, and what was found in it. */
export interface Checked {
  readonly file: JobFile
  readonly findings: readonly Finding[]
}

/** The correction of a reading as a person may be told it: without steps where something it hangs on is written wrong, or where the log shows that
 * the reading or the bed may not be what the job says. */
export function trustedCorrection(reading: Block, lookup: Lookup, checked: Checked): CorrectionOutcome {
  const outcome = correctionOf(reading, lookup)
  if (!outcome.ok) return outcome
  const errors = errorsUnder(reading, lookup, checked).map(({ check, at }) => ({
    check,
    place: placeIn(checked.file, at),
  }))
  if (errors.length > 0) return { ok: true, value: { ...withhold(outcome.value, 'errors'), errors } }
  const slip = slipOf(reading, lookup)
  if (!slip) return outcome
  const told = { ...outcome.value, slip: slip.words }
  return { ok: true, value: slip.withholds ? withhold(told, 'another-effect') : told }
}

function placeIn({ document }: JobFile, at: Finding['at']): string {
  if (!hasSection(document, at.section)) return 'another file'
  const { line, character } = rangeOf(document, at).start
  return `${line + 1}:${character + 1}`
}

/** The verdict of a reading is what its plan is for: it is no error of the job file. */
const verdicts = new Set(['alignment/gap-variation-outside', 'alignment/offset-outside'])

/** Facts that no plan asks for: what is wrong in one of them changes none. */
const beside: Readonly<Record<string, readonly string[]>> = {
  coupling: ['kind', 'rated-torque', 'bolts'],
  reading: ['by', 'note', 'afloat', 'hot'],
  move: ['by'],
}

const isBeside = ({ at }: Finding, { kind, node }: Block): boolean =>
  node.items.some(
    (item) =>
      item.type === 'fact' &&
      beside[kind]?.includes(item.name.text) === true &&
      contains(item.span, at.span.start),
  )

const isIn = ({ at }: Finding, { section, node }: Block): boolean =>
  at.section === section && node.span.start <= at.span.start && at.span.end <= node.span.end

/** The errors in what the plan of a reading hangs on: the reading, the coupling, the bed, the moves, and whatever in the drive was not
 * understood and could have been one of them. */
export function errorsUnder(reading: Block, lookup: Lookup, { file, findings }: Checked): readonly Finding[] {
  const drive = reading.parent
  const of = (kind: string) => (drive ? childrenOf(drive, kind) : [])
  const shared = (['coupling', 'bed'] as const).flatMap((kind) => lookup.near(kind) ?? [])
  const under = [reading, ...shared, ...of('coupling'), ...of('bed'), ...of('move')]
  const stray = drive ? afterDrive(file, drive) : new Set()
  return findings.filter((finding) => {
    if (finding.severity !== 'error' || verdicts.has(finding.check)) return false
    const holder = under.find((block) => isIn(finding, block))
    if (holder) return !isBeside(finding, holder)
    if (!drive || !finding.check.startsWith('job/')) return false
    if (stray.has(finding.at.section)) return !isInItsPlace(finding)
    return finding.at.section === drive.section && isMisread(finding, drive)
  })
}

/** Blocks that run into each other: which of them a line belongs to is open. */
const running = new Set(['job/block-misplaced', 'job/block-not-closed', 'job/closing-without-block'])

/** Whether an error may hide a part of the log: one directly in the drive, in a block of it that was not understood, or in what shapes
 * another of its readings. */
function isMisread(finding: Finding, drive: Block): boolean {
  if (running.has(finding.check)) return true
  const part = drive.children.find((block) => isIn(finding, block))
  if (part && part.kind !== 'reading') return !findKind(part.kind)?.within.includes('drive')
  if (part && finding.check === 'job/fact-missing') return false
  const { kind, node } = part ?? drive
  const facts = findKind(kind)?.facts ?? {}
  return !node.items.some(
    (item) =>
      item.type === 'fact' &&
      Object.hasOwn(facts, item.name.text) &&
      contains(item.span, finding.at.span.start),
  )
}

/** Whether an error stands in a block that is understood and belongs at the top of a file: it is that block's own. */
function isInItsPlace({ at }: Finding): boolean {
  const block = at.section.parsed.tree.items.find((item) => contains(item.span, at.span.start))
  return block?.type === 'block' && findKind(block.kind.text)?.within.includes('top') === true
}

/** What follows a drive up to the next one: a bracket too many puts the rest of the drive there. */
function afterDrive({ document: { sections } }: JobFile, drive: Block): ReadonlySet<unknown> {
  const rest = sections.slice(sections.indexOf(drive.section) + 1)
  const next = rest.findIndex(({ parsed: { tree } }) =>
    tree.items.some((item) => item.type === 'block' && item.kind.text === 'drive'),
  )
  return new Set(next < 0 ? rest : rest.slice(0, next))
}
