import { type Markdown, withoutTicks } from '../../areas/common/markdown.ts'

/** Our own Markdown as text that reads well without being rendered: tables as columns, code and bold as their words, no escapes. A link that has
 * a line to itself keeps its address. */
export function plainText(markdown: Markdown): string {
  const lines: string[] = []
  let table: string[] = []
  let fence: string | undefined
  for (const line of [...markdown.split('\n'), '']) {
    if (fence === undefined && line.startsWith('|')) {
      table.push(line)
      continue
    }
    lines.push(...columns(table))
    table = []
    if (fence === undefined) {
      fence = /^`{3,}/.exec(line)?.[0]
      if (fence === undefined) lines.push(plainLine(line))
    } else if (line === fence) fence = undefined
    else lines.push(`  ${line}`)
  }
  return lines.join('\n').trimEnd()
}

/** The second row only says how the columns are aligned. */
function columns(table: readonly string[]): readonly string[] {
  const rows = table
    .filter((_, i) => i !== 1)
    .map(cellsOf)
    .filter((row) => row.some((cell) => cell !== ''))
  const width = (column: number) => Math.max(...rows.map((row) => row[column]?.length ?? 0))
  return rows.map((row) =>
    row
      .map((cell, column) => cell.padEnd(width(column)))
      .join('  ')
      .trimEnd(),
  )
}

const cellsOf = (row: string): readonly string[] =>
  row
    .split(/(?<!\\)\|/)
    .slice(1, -1)
    .map((cell) => plainWords(cell.replaceAll('\\|', '|')).trim())

function plainLine(line: string): string {
  const [, words, address] = /^\*{0,2}\[([^\]]*)\]\(([^)]*)\)\*{0,2}$/.exec(line) ?? []
  if (words !== undefined) return `${plainWords(words)}: ${address}`
  return plainWords(line.replace(/^\*([^*].*)\*$/, '$1'))
}

const marked =
  /(?<code>`+).+?\k<code>|\\(?<escaped>[!-/:-@[-`{-~])|\*\*(?<bold>.+?)\*\*|\[(?<link>[^\]]*)\]\([^)]*\)/g

const plainWords = (text: string): string =>
  text.replace(marked, (whole: string, ...more: unknown[]) => {
    const { code, escaped, bold, link } = more.at(-1) as Readonly<Record<string, string | undefined>>
    return code === undefined ? (escaped ?? plainWords(bold ?? link ?? '')) : withoutTicks(whole)
  })
