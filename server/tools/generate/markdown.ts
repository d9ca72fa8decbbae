/** First line of every generated page. */
export const madeBy = '<!-- Made by `npm run generate`. -->'

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ')

export const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows.map((row) => row.map(cell))]
    .map((row) => `| ${row.join(' | ')} |`)
    .join('\n')

/** Code in a line of text; nothing for nothing. */
export const code = (text: string): string => (text === '' ? '' : `\`${text}\``)

export const fence = (text: string): string => `\`\`\`wright\n${text.replace(/\n+$/, '')}\n\`\`\``
