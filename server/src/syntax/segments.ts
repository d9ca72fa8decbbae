import { lex, Word } from './tokens.ts'
import type { Leaf, Span } from './tree.ts'

/** Whether a text is read as one name, which has no dots. */
export function isName(text: string): boolean {
  const [word, ...more] = lex(text).tokens
  return word?.tokenType === Word && word.image === text && more.length === 0 && !text.includes('.')
}

/** Where each word of a dotted path stands in the text around it. The span of a path in brackets or in quotes has these in it. */
export function segmentsOf({ text: path, span }: Leaf, text: string): readonly Span[] {
  let next = text.indexOf(path, span.start)
  return path.split('.').map((segment) => {
    const start = next
    next = start + segment.length + 1
    return { start, end: start + segment.length }
  })
}
