/** A word of the job as code. */
const names = /`([^`]+)`/g

/** A table in Markdown of cells in Markdown. A hover breaks a name at its hyphens where its column is narrow, and a name with another sign in
 * the place of its hyphens could not be copied: so the heading of a column of names is as long as the longest of them, and cannot be broken. */
export function markdownTable(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = heads.map((_, column) =>
    Math.max(
      0,
      ...rows.flatMap((row) => [...(row[column] ?? '').matchAll(names)].map(([, name = '']) => name.length)),
    ),
  )
  const wide = (head: string, width: number) =>
    head === '' || width <= head.length ? head : `\`${head.padEnd(width, '\u00A0')}\``
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`
  return [
    line(heads.map((head, column) => wide(head, widths[column] ?? 0))),
    `|${':--|'.repeat(heads.length)}`,
    ...rows.map(line),
  ].join('\n')
}
