/** A text of the user's as it is: nothing in it is read as Markdown or HTML. */
export const plain = (text: string): string =>
  text.replace(/[\\`*_{}[\]()<>#|~&!]/g, '\\$&').replace(/\s+/g, ' ')

/** As code; a text with backticks in it keeps them. */
export const code = (text: string): string => (text.includes('`') ? `\`\` ${text} \`\`` : `\`${text}\``)

/** Without the signs of code, where an editor shows plain text. */
export const withoutTicks = (text: string): string =>
  text.replace(/(`+)(.+?)\1/g, (_, ticks: string, inner: string) => (ticks === '`' ? inner : inner.trim()))

/** The language as editors name it, so that they colour it. */
export const example = (text: string): string => `\`\`\`shaftwright\n${text}\n\`\`\``

/** What a thing is, with its name where it has one. */
export const headed = (what: string, name: string | undefined): string =>
  name === undefined ? what : `${what} ${name}`

/** Paragraphs, without the empty ones. */
export const paragraphs = (...texts: readonly (string | undefined)[]): string =>
  texts.filter((text) => text !== undefined && text !== '').join('\n\n')

export const list = (lines: readonly (string | undefined)[]): string =>
  lines
    .filter((line) => line !== undefined)
    .map((line) => `- ${line}`)
    .join('\n')
