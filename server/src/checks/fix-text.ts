import type { Block, Place, Section } from '../job/model.ts'
import type { FactNode, Span } from '../syntax/tree.ts'
import { findKind } from '../vocabulary/index.ts'
import type { Edit, Fix } from './fix.ts'

/** Stands in an edit's text for what only the person can write. It reads as a word, so that the layout round it is that of a word. */
export const blank = 'q0blank0q'

export const replace = (at: Place, newText: string): Edit => ({ at, newText })

export const insert = (section: Section, offset: number, newText: string): Edit => ({
  at: { section, span: { start: offset, end: offset } },
  newText,
})

export const textAt = ({ section, span }: Place): string => section.text.slice(span.start, span.end)

/** The block's own fact that stands at a place. */
export const factAt = (block: Block | undefined, at: Place): FactNode | undefined =>
  block?.section === at.section
    ? block.node.items.find(
        (item): item is FactNode =>
          item.type === 'fact' && item.span.start <= at.span.start && at.span.end <= item.span.end,
      )
    : undefined

/** Whether a figure would be lost: `starboard1.80` is more than a misspelt `starboard`. */
const losesFigure = (written: string, near: string): boolean => /\d/.test(written) && !/\d/.test(near)

/** The word or value at the finding as the nearest that is known. */
export const useNearest = (at: Place, near: string | undefined): readonly Fix[] =>
  near !== undefined && near !== textAt(at) && !losesFigure(textAt(at), near)
    ? [
        {
          title: `Write ${near}`,
          edits: [replace(at, near)],
          preferred: true,
          uncovers: true,
          ...(plain(near) === plain(textAt(at)) && { safe: true }),
        },
      ]
    : []

/** Two words that differ in case or underscores alone are one slip of the pen. */
const plain = (word: string): string => word.toLowerCase().replaceAll('_', '-')

/** The amount at the finding as it was surely meant. */
export const writeMeant = (at: Place, meant: string | undefined): readonly Fix[] =>
  meant === undefined
    ? []
    : [{ title: `Write ${meant}`, edits: [replace(at, meant)], preferred: true, uncovers: true }]

/** A new value for a fact, and no longer the old one's provenance: the new one does not come from there. */
export const newValue = (section: Section, fact: FactNode, value: string): Edit =>
  replace({ section, span: { start: fact.valueSpan.start, end: fact.span.end } }, value)

const indentOf = (text: string, offset: number): string => {
  const start = Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1
  return /^[ \t]*/.exec(text.slice(start, offset))?.[0] ?? ''
}

const lineEnd = (text: string, from: number): number => {
  const end = text.slice(from).search(/[\r\n]/)
  return end < 0 ? text.length : from + end
}

/** Offset behind the opening brace. */
const opened = ({ section, node }: Block): number => section.text.indexOf('{', node.headSpan.end) + 1

/** A fact in the place the vocabulary gives it among those of the block. */
export function addFact(block: Block, name: string, value = blank): Edit {
  const { section, node } = block
  const order = Object.keys(findKind(block.kind)?.facts ?? {})
  const before = node.items.findLast(
    (item): item is FactNode =>
      item.type === 'fact' &&
      order.includes(item.name.text) &&
      order.indexOf(item.name.text) < order.indexOf(name),
  )
  const [first] = node.items
  // In front of a line that is no fact, the fact would take it for its value.
  const behind = before ?? (first?.type === 'line' ? node.items.at(-1) : undefined)
  const from = behind?.span.end ?? opened(block)
  const end = lineEnd(section.text, from)
  const rest = section.text.slice(from, end)
  if (end < node.span.end && (behind || /^\s*(#|$)/.test(rest)))
    return insert(section, end, `\n${indentOf(section.text, node.span.start)}  ${name}: ${value}`)
  return insert(section, from, behind ? `  ${name}: ${value}` : ` ${name}: ${value} `)
}

/** A fact as the block that it is now written as, on a line of its own. */
export function rewriteFact(block: Block | undefined, at: Place, lines: string): readonly Fix[] {
  const fact = factAt(block, at)
  if (!block || !fact) return []
  const { text } = block.section
  const { start, end } = fact.span
  const indent = `\n${indentOf(text, block.node.span.start)}`
  const isFirst = /(^|[\r\n])[ \t]*$/.test(text.slice(0, start))
  const isLast = /^[ \t]*(#|[\r\n]|$)/.test(text.slice(end))
  const rest = text.slice(end).trimStart().startsWith('}') ? indent : `${indent}  `
  const newText = `${isFirst ? '' : `${indent}  `}${lines}${isLast ? '' : rest}`
  const title = `Write it as a ${/^\S+/.exec(lines)?.[0] ?? 'block'}`
  return [
    {
      title,
      edits: [replace({ section: block.section, span: fact.span }, newText)],
      preferred: true,
      uncovers: true,
    },
  ]
}

/** The brace that ends a block which has none. */
export function closing({ section, node }: Block): Edit {
  const { text } = section
  const inside = /[\r\n]/.test(text.slice(node.span.start, node.span.end))
  // Behind a comment on the last line, or it would be part of it.
  const end = lineEnd(text, node.span.end)
  const onLine = !inside && text.slice(node.span.end, end).trim() === ''
  return insert(
    section,
    onLine ? node.span.end : end,
    onLine ? ' }' : `\n${indentOf(text, node.span.start)}}`,
  )
}

/** Where the brace of a block begins that ends it; past all text where it has none. */
const endOf = ({ section, node }: Block): number =>
  section.text[node.span.end - 1] === '}' ? node.span.end : Number.POSITIVE_INFINITY

const indented = (lines: string, by: string): string => lines.replaceAll(/^(?=.)/gm, by)

/** A block as the last one inside another. */
export function addBlock(within: Block, lines: string): Edit {
  const { section, node } = within
  const indent = indentOf(section.text, node.span.start)
  const last = node.items.at(-1)?.span.end ?? opened(within)
  return afterLine(section, last, endOf(within), { lines: indented(lines, `${indent}  `), indent })
}

/** A block on the lines after another. */
export function addAfter(block: Block, lines: string): Edit {
  const { section, node, parent } = block
  const indent = parent
    ? `${indentOf(section.text, parent.node.span.start)}  `
    : indentOf(section.text, node.span.start)
  const limit = parent ? endOf(parent) : Number.POSITIVE_INFINITY
  const outer = parent ? indentOf(section.text, parent.node.span.start) : ''
  return afterLine(section, node.span.end, limit, { lines: indented(lines, indent), indent: outer })
}

/** A block written anew where it stands. */
export const rewrite = ({ section, node }: Block, lines: string): Edit =>
  replace({ section, span: node.span }, indented(lines, indentOf(section.text, node.span.start)).trimStart())

/** Lines after the one at `from`; where the block they go into ends on that line, its brace goes to the next. */
function afterLine(
  section: Section,
  from: number,
  limit: number,
  { lines, indent }: { readonly lines: string; readonly indent: string },
): Edit {
  const end = lineEnd(section.text, from)
  if (end < limit) return insert(section, end, `\n${lines}`)
  return insert(section, from, `\n${lines}\n${indent}`)
}

/** A block at the end of the file, a blank line before it. */
export function addAtEnd(sections: readonly Section[], lines: string): Edit | undefined {
  const last = sections.findLast(({ text }) => text !== '') ?? sections[0]
  return last && insert(last, last.text.length, `${/[\r\n]$/.test(last.text) ? '\n' : '\n\n'}${lines}\n`)
}

/** The name, or with the next number behind it that nothing goes by. */
export function freeName(name: string, isTaken: (name: string) => boolean): string {
  let free = name
  for (let n = 2; isTaken(free); n += 1) free = `${name}-${n}`
  return free
}

/** What stands at a span taken out, with its line when nothing else is on it. */
export function takeOut(section: Section, { start, end }: Span): Edit {
  const { text } = section
  const from = start - indentOf(text, start).length
  const alone = from === 0 || /[\r\n]/.test(text[from - 1] ?? '')
  const rest = /^[ \t]*(\r\n|[\r\n]|$)/.exec(text.slice(end))
  if (alone && rest) return replace({ section, span: { start: from, end: end + rest[0].length } }, '')
  const gap = /[ \t]*$/.exec(text.slice(0, start))?.[0].length ?? 0
  return replace({ section, span: { start: start - gap, end } }, '')
}
