import type { IToken } from 'chevrotain'
import { endOf } from './tokens.ts'
import type { Item } from './tree.ts'

/** Hangs `##` comments on the item whose line follows them. */
export function withDocs(items: readonly Item[], trivia: readonly IToken[], text: string): Item[] {
  const docs = trivia.filter((t) => t.image.startsWith('##'))
  if (docs.length === 0) return [...items]
  const lines = new Map<number, string>() // offset of the line behind the comment -> its words
  for (const doc of docs) {
    const lineStart = Math.max(text.lastIndexOf('\n', doc.startOffset - 1) + 1, 0)
    const above = lines.get(lineStart)
    const words = doc.image.replace(/^#+\s?/, '')
    lines.delete(lineStart)
    const nextLine = text.indexOf('\n', endOf(doc))
    if (nextLine >= 0) lines.set(nextLine + 1, above === undefined ? words : `${above}\n${words}`)
  }
  const attach = (item: Item): Item => {
    const doc = lines.get(text.lastIndexOf('\n', item.span.start - 1) + 1)
    const own = doc === undefined ? {} : { doc }
    if (item.type === 'block') return { ...item, ...own, items: item.items.map(attach) }
    return item.type === 'fact' ? { ...item, ...own } : item
  }
  return items.map(attach)
}
