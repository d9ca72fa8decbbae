/** Where the `?` of a text stand that hold the place of a value: not those in comments or in quotes. */
export function blanksIn(text: string): readonly number[] {
  const found = text.matchAll(/"(?:[^"\\\r\n]|\\.)*"?|#.*|\?/g)
  return [...found].filter(([token]) => token === '?').map(({ index }) => index)
}

/** The first `?` that does not begin before an offset; behind the last, the first of the text. */
export function blankFrom(text: string, offset: number): number | undefined {
  const blanks = blanksIn(text)
  return blanks.find((at) => at >= offset) ?? blanks[0]
}

/** The last `?` that begins before an offset; before the first, the last of the text. */
export function blankBefore(text: string, offset: number): number | undefined {
  const blanks = blanksIn(text)
  return blanks.findLast((at) => at < offset) ?? blanks.at(-1)
}

/** The text from `start` to its last blank as a snippet with a place for each blank from `at` on, and where that ends. */
export function snippetFrom(
  text: string,
  { start, at }: { readonly start: number; readonly at: number },
): { readonly snippet: string; readonly end: number } {
  const blanks = blanksIn(text).filter((blank) => blank >= at)
  let snippet = ''
  let end = start
  for (const [i, blank] of blanks.entries()) {
    snippet += `${text.slice(end, blank).replaceAll(/[\\$}]/g, '\\$&')}\${${i + 1}:?}`
    end = blank + 1
  }
  return { snippet, end }
}
