const maxLength = 40

/** What a file says, short enough to be repeated in a sentence: its beginning and its end. */
export const elide = (text: string): string =>
  text.length <= maxLength
    ? text
    : `${withoutHalfSurrogates(text.slice(0, maxLength - 16))}…${withoutHalfSurrogates(text.slice(-15))}`

/** Without the half of a sign that the cut went through. */
const withoutHalfSurrogates = (text: string): string => text.replace(/^[\uDC00-\uDFFF]|[\uD800-\uDBFF]$/g, '')
