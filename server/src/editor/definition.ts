import { isUse } from '../job/bind.ts'
import { resolvePath } from '../job/files.ts'
import type { Place, Section } from '../job/model.ts'
import type { View } from '../job/per-section.ts'
import { contains } from '../syntax/tree.ts'
import { targetAt } from './target.ts'

/** Where what the word at an offset stands for is defined: the name of a block, a fact, the mark of a terminal, the file of a `use`. */
export function definition(view: View, section: Section, offset: number): Place | undefined {
  return usedFile(view, section, offset) ?? targetAt(view, section, offset)?.named
}

/** The beginning of the file that a `use` line names. */
function usedFile({ file }: View, section: Section, offset: number): Place | undefined {
  const line = section.parsed.tree.items.find((item) => contains(item.span, offset))
  const part = line && isUse(line) ? line.entries[0]?.parts[1] : undefined
  if (part?.type !== 'text' || !contains(part.span, offset)) return undefined
  const path = resolvePath(file.path, part.text)
  const [first] = file.used.find((used) => used.path === path)?.document.sections ?? []
  return first && { section: first, span: { start: 0, end: 0 } }
}
