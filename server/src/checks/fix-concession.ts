import type { Finding, FixGround } from './check.ts'
import { isConcedable } from './concessions.ts'
import type { Fix } from './fix.ts'
import { addAtEnd, blank } from './fix-text.ts'

const isWord = /^[A-Za-z][\w-]*(\.[A-Za-z][\w-]*)*$/

/** A concession for the finding at the end of the file. Why, by whom and until when is for the person who accepts it: until that is written
 * the finding counts in full. */
export function acceptFinding(finding: Finding, { file, block, lookup }: FixGround): readonly Fix[] {
  const { check, severity } = finding
  if (!block || !lookup || severity === 'information' || check.startsWith('job/') || !isConcedable(finding))
    return []
  const named = lookup
    .ofKind('concession')
    .some(({ about, facts }) => about?.text === check && facts.get('on')?.value === block.path)
  const on = isWord.test(block.path) ? block.path : `"${block.path}"`
  const lines = [
    `concession ${check} {`,
    `  on:         ${on}`,
    `  reason:     "${blank}"`,
    `  granted-by: "${blank}"`,
    `  until:      ${blank}`,
    '}',
  ]
  const edit = named ? undefined : addAtEnd(file.document.sections, lines.join('\n'))
  return edit
    ? [{ title: 'Accept with a concession', edits: [edit], leaves: [check, 'job/fact-missing'] }]
    : []
}
