import { type Finding, fullMessage } from '../../checks/check.ts'
import { isBesidePlan } from '../../checks/plan-facts.ts'
import { hasSection, rangeOf } from '../../job/document.ts'
import type { JobFile } from '../../job/files.ts'
import { type Block, childrenOf, isWithin } from '../../job/model.ts'
import type { Lookup } from '../../store/lookup.ts'
import { contains } from '../../syntax/tree.ts'
import { findKind } from '../../vocabulary/index.ts'
import { ok } from '../common/outcome.ts'
import type { Ground } from '../common/view.ts'
import {
  type Accepted,
  type Correction,
  type CorrectionOutcome,
  correctionOf,
  correctionOnSoftFeet,
  withhold,
} from './plans/correction.ts'
import { softUpTo } from './plans/lifts.ts'
import { moveDiscrepancy } from './plans/move-discrepancy.ts'

/** The job file a plan is made from, and what was found in it. */
export interface Checked {
  readonly file: JobFile
  readonly findings: readonly Finding[]
}

/** The correction of a reading as a person may be told it: without steps where the plan waits for something that was found in what it is made
 * from, or where the log shows that the reading or the bed may not be what the job says. */
export function trustedCorrection(of: Block, around: Lookup, checked: Checked): CorrectionOutcome {
  const lookup = around.from(of)
  const { block: reading } = lookup
  const outcome = trusted(reading, lookup, checked)
  const accepted = acceptedUnder(reading, lookup, checked)
  return outcome.ok && accepted.length > 0 ? ok({ ...outcome.value, accepted }) : outcome
}

/** The same on what is known of the file around it. */
export const trustedOn = (reading: Block, lookup: Lookup, { file, findings }: Ground): CorrectionOutcome =>
  trustedCorrection(reading, lookup, { file, findings: findings() })

/** What concessions accept in the drive, and in what it shares with others: whoever works by the plan has to know it. */
const acceptedUnder = (reading: Block, lookup: Lookup, { file, findings }: Checked): readonly Accepted[] => {
  const under = [...(reading.parent ? [reading.parent] : []), ...sharedWith(lookup)]
  return findings.flatMap(({ check, at, message, concession }) =>
    concession && under.some((block) => isWithin(at, block))
      ? [{ check, place: placeIn(file, at), message, ...concession }]
      : [],
  )
}

const sharedWith = (lookup: Lookup): readonly Block[] =>
  (['coupling', 'bed', 'target'] as const).flatMap((kind) => lookup.near(kind) ?? [])

function trusted(reading: Block, lookup: Lookup, checked: Checked): CorrectionOutcome {
  const found = correctionOf(reading, lookup)
  if (!found.ok) return found
  // Only where it is worked out are the lifts known to be readable.
  const outcome = acceptsSoft(reading, lookup, checked) ? correctionOnSoftFeet(reading, lookup) : found
  if (!outcome.ok) return outcome
  const awaited = awaitedUnder(reading, lookup, checked)
  if (awaited.length > 0) return ok(waiting(outcome.value, awaited, checked.file))
  const discrepancy = moveDiscrepancy(reading, lookup)
  if (!discrepancy) return outcome
  const withDiscrepancy = { ...outcome.value, moveDiscrepancy: discrepancy.words }
  return ok(discrepancy.withholds ? withhold(withDiscrepancy, 'another-effect') : withDiscrepancy)
}

/** Whether every reading that found a foot soft that still is has a concession for it. */
function acceptsSoft(reading: Block, lookup: Lookup, { findings }: Checked): boolean {
  const accepted = findings.filter((one) => one.accepted && one.check === 'alignment/soft-foot')
  if (accepted.length === 0) return false
  const still = softUpTo(reading, lookup)
  return (
    still?.in.every((id) => {
      const one = lookup.blockOf(id)
      return accepted.some((finding) => isWithin(finding.at, one))
    }) === true
  )
}

function waiting(c: Correction, awaited: readonly Finding[], file: JobFile): Correction {
  const isError = ({ severity }: Finding) => severity === 'error'
  const errors = awaited.filter(isError).map(({ check, at }) => ({ check, place: placeIn(file, at) }))
  const findings = awaited
    .filter((finding) => !isError(finding))
    .map((finding) => ({
      check: finding.check,
      place: placeIn(file, finding.at),
      message: fullMessage(finding),
      todo: finding.todo,
    }))
  return {
    ...withhold(c, errors.length > 0 ? 'errors' : 'finding'),
    ...(errors.length > 0 && { errors }),
    ...(findings.length > 0 && { findings }),
  }
}

function placeIn({ document }: JobFile, at: Finding['at']): string {
  if (!hasSection(document, at.section)) return 'another file'
  const { line, character } = rangeOf(document, at).start
  return `${line + 1}:${character + 1}`
}

/** An error of the text is waited for; each check on what a plan is made from says for itself. What was accepted is waited for no longer. */
const isAwaited = ({ severity, plan, accepted }: Finding): boolean =>
  !accepted && (plan === undefined ? severity === 'error' : plan === 'waits')

const isBeside = ({ at }: Finding, { kind, node }: Block): boolean => {
  const names = at.taken
    ? [at.taken.fact]
    : node.items.flatMap((item) =>
        item.type === 'fact' && contains(item.span, at.span.start) ? [item.name.text] : [],
      )
  return names.some((name) => name !== undefined && isBesidePlan(kind, name))
}

/** What the plan of a reading waits for: findings in the reading, the coupling, the bed, the target and the moves, and in whatever in the drive was
 * not understood and could have been one of them. */
export function awaitedUnder(of: Block, around: Lookup, { file, findings }: Checked): readonly Finding[] {
  const lookup = around.from(of)
  const { block: reading } = lookup
  const drive = reading.parent
  const inDrive = (kind: string) => (drive ? childrenOf(drive, kind) : [])
  const under = [reading, ...sharedWith(lookup), ...['coupling', 'bed', 'target', 'move'].flatMap(inDrive)]
  const stray = drive ? afterDrive(file, drive) : new Set()
  return findings.filter((finding) => {
    if (!isAwaited(finding)) return false
    const holder = under.find((block) => isWithin(finding.at, block))
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
  const part = drive.children.find((block) => isWithin(finding.at, block))
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
