import type { Finding, FixGround } from '../checks/check.ts'
import type { Fix } from '../checks/fix.ts'
import { acceptFinding } from '../checks/fix-concession.ts'
import { memoizeByIdentity } from '../common/memoize-by-identity.ts'
import type { Analysis } from '../job/analysis.ts'
import { aroundIn, withInner } from '../job/around.ts'
import { hasSection } from '../job/document.ts'
import type { JobFile } from '../job/files.ts'
import type { Block, Place } from '../job/model.ts'
import { lookupFrom } from '../store/store.ts'
import { allChecks } from './index.ts'

const byId = new Map(allChecks.map((check) => [check.id, check]))

interface FixInputs {
  readonly analysis: Analysis
  readonly file: JobFile
  readonly today: string
  /** Of the file as it stands now. */
  readonly findings?: readonly Finding[]
}

/** What can be offered for a finding of a file, most likely first; nothing that would change another file. What a drive takes from another is
 * not written where the finding stands, so nothing there can be mended. */
export function fixesFor(finding: Finding, given: FixInputs): readonly Fix[] {
  if (finding.at.taken) return []
  const ground = groundOf(finding, given)
  const own = ground && byId.get(finding.check)?.fixes?.(finding, ground)
  return (own ?? []).filter(({ edits }) =>
    edits.every(({ at }) => hasSection(given.file.document, at.section)),
  )
}

/** What lets a finding stand with somebody's word for it: offered last. */
export function acceptanceFor(finding: Finding, given: FixInputs): readonly Fix[] {
  const ground = groundOf(finding, given)
  return ground ? acceptFinding(finding, ground) : []
}

function groundOf(
  { at }: Finding,
  { analysis, file, today, findings = [] }: FixInputs,
): FixGround | undefined {
  if (!hasSection(file.document, at.section)) return undefined
  const block = blockAt(analysis.bound(file, at.section).blocks, at)
  return { file, block, lookup: block && lookupFrom(block, { analysis, file }), today, findings }
}

const aroundOf = memoizeByIdentity((blocks: readonly Block[]) => aroundIn(withInner(blocks)))

/** The innermost block around a place. */
export const blockAt = (blocks: readonly Block[], place: Place): Block | undefined =>
  aroundOf(blocks)(place).at(-1)
