import type { Leaf, Span } from './tree.ts'

/** Where each word of a dotted path stands in the text around it. The span of a path in brackets or in quotes has these in it. */
export function segmentsOf({ text: path, span }: Leaf, text: string): readonly Span[] {
  let next = text.indexOf(path, span.start)
  return path.split('.').map((segment) => {
    const start = next
    next = start + segment.length + 1
    return { start, end: start + segment.length }
  })
}
