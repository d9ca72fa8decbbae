import { isUse } from '../../job/bind.ts'
import { resolvePath } from '../../job/files.ts'
import { headingOf, type Place, type Section } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import { contains } from '../../syntax/tree.ts'
import { isSamePlace, type Target, targetAt } from './target.ts'

/** Where what the word at an offset stands for is defined: the name of a block, a fact, the mark of a terminal, the file of a `use`. */
export function definition(view: View, section: Section, offset: number): Place | undefined {
  const used = usedFile(view, section, offset)
  const target = used ? undefined : targetAt(view, section, offset)
  return used ?? (target && definedAt(target, section))
}

/** Where it is written; from there, where its drive takes it from. */
function definedAt(target: Target, section: Section): Place {
  const { block, is, span, named } = target
  const isHere = (at: Place) => isSamePlace(at, { section, span })
  if (is === 'block') {
    const own = headingOf(block)
    return isHere(own) && block.source ? headingOf(block.source) : own
  }
  const name = section.text.slice(span.start, span.end)
  const source = is === 'fact' && isHere(named) ? block.source?.facts.get(name) : undefined
  return source ? { section: (source.origin ?? source.at).section, span: source.node.name.span } : named
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
