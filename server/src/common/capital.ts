/** A text that begins with a capital letter. */
export const capital = (text: string): string => text.replace(/^./, (c) => c.toUpperCase())
