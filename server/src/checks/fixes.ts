import type { Analysis } from '../job/analysis.ts'
import { hasSection } from '../job/document.ts'
import type { JobFile } from '../job/files.ts'
import { lookupFrom } from '../job/lookup.ts'
import type { Block, Place } from '../job/model.ts'
import type { Finding } from './check.ts'
import type { Fix, FixGround } from './fix.ts'
import { allChecks } from './index.ts'

const byId = new Map(allChecks.map((check) => [check.id, check]))

interface Given {
  readonly analysis: Analysis
  readonly file: JobFile
  readonly today: string
}

/** What can be offered for a finding of a file; nothing that would change another file. */
export function fixesFor(finding: Finding, { analysis, file, today }: Given): readonly Fix[] {
  if (!hasSection(file.document, finding.at.section)) return []
  const block = blockAt(analysis.bound(file, finding.at.section).blocks, finding.at)
  const lookup = block && lookupFrom(block, analysis.scope(file))
  const ground: FixGround = { file, block, lookup, today }
  const own = byId.get(finding.check)?.fixes?.(finding, ground) ?? []
  return own.filter(({ edits }) => edits.every(({ at }) => hasSection(file.document, at.section)))
}

/** The innermost block around a place. */
function blockAt(blocks: readonly Block[], { span }: Place): Block | undefined {
  const around = blocks.find(({ node }) => node.span.start <= span.start && span.end <= node.span.end)
  return around && (blockAt(around.children, { section: around.section, span }) ?? around)
}
