import { harmless, harmlessLines } from '../../syntax/harmless.ts'

declare const rendered: unique symbol

/** Text that an editor renders. It is made only here, so that the compiler finds a text of a job that nobody has escaped: a picture in a hover
 * would tell its address that an untrusted folder was looked at. */
export type Markdown = string & { readonly [rendered]: true }

const made = (text: string): Markdown => text as Markdown

const oneLine = (text: string): string => harmless(text.replace(/\s+/g, ' '))

/** Nothing in it is read as Markdown, as HTML or as an address (CommonMark 0.31, section 2.4; GitHub Flavored Markdown 0.29, section 6.9). */
const escaped = (text: string): string =>
  oneLine(text).replace(/[\\`*_[\]<>|~]|&(?=#?\w+;)|(?<=\S)@(?=\S)|:(?=\/\/)|(?<=www)\./gi, '\\$&')

/** In a line of its own it begins no list, no rule and no heading. */
const inLine = (text: string): Markdown =>
  made(text.trim().replace(/^(?=[-+=#])|^(\d+)(?=[.)](?: |$))/, '$1\\'))

/** A text of the user's as it is. */
export const plain = (text: string): Markdown => inLine(escaped(text))

/** A sentence of ours in which texts of the user's may stand: code is what has ticks around it, all else is as it is. */
export const prose = (sentence: string): Markdown =>
  inLine(
    sentence
      .split(/(`[^`\r\n]+`)/)
      .map((piece, i) => (i % 2 === 1 ? harmless(piece) : escaped(piece)))
      .join(''),
  )

/** What we wrote as Markdown ourselves, in the vocabulary and in the checks. A relative link leads on from `at`; where that is not known, its
 * words are left. */
export const ours = (markdown: string, at?: string): Markdown =>
  made(
    markdown.replace(/\[([^\]]*)\]\((?!https:)([^)]*)\)/g, (_, words: string, path: string) =>
      at === undefined ? words : link(words, path, at),
    ),
  )

export const link = (words: string, path: string, at: string): Markdown =>
  made(`[${words}](${new URL(path, at).href})`)

/** Our Markdown, with more put in. */
export const md = (ours: TemplateStringsArray, ...more: readonly Markdown[]): Markdown =>
  made(String.raw({ raw: ours }, ...more))

const longestRun = (text: string): number =>
  (text.match(/`+/g) ?? []).reduce((longest, run) => Math.max(longest, run.length), 0)

/** As code, with its own backticks. */
export function code(text: string): Markdown {
  const line = oneLine(text)
  const run = longestRun(line)
  const ticks = '`'.repeat(run + 1)
  return made(run > 0 || line === '' ? `${ticks} ${line} ${ticks}` : `${ticks}${line}${ticks}`)
}

/** The language as editors name it, so that they colour it. */
export function example(text: string): Markdown {
  const fence = '`'.repeat(Math.max(3, longestRun(text) + 1))
  return made(`${fence}shaftwright\n${harmlessLines(text)}\n${fence}`)
}

/** Without the signs of code, where an editor shows plain text. */
export const withoutTicks = (text: string): string =>
  text.replace(/(`+)(.+?)\1/g, (_, ticks: string, inner: string) => (ticks === '`' ? inner : inner.trim()))

/** What a thing is, with its name where it has one. */
export const headed = (
  what: string,
  name: string | undefined,
  shown: (name: string) => Markdown = plain,
): Markdown => (name === undefined ? prose(what) : md`${prose(what)} ${shown(name)}`)

/** Paragraphs, without the empty ones. */
export const paragraphs = (...texts: readonly (Markdown | '' | undefined)[]): Markdown =>
  made(texts.filter((text) => text !== undefined && text !== '').join('\n\n'))

/** In one line, without the missing ones. */
export const joined = (texts: readonly Markdown[], separator: string): Markdown => made(texts.join(separator))

export const list = (lines: readonly (Markdown | '' | undefined)[]): Markdown =>
  made(
    lines
      .filter((line) => line !== undefined && line !== '')
      .map((line) => `- ${line}`)
      .join('\n'),
  )

/** A bar that parts no cells. */
const barred = (cell: Markdown): string =>
  cell.replace(/(\\*)\|/g, (whole, before: string) => (before.length % 2 === 1 ? whole : `${before}\\|`))

/** A word of the job as code. */
const names = /`([^`]+)`/g

/** A table. A hover breaks a name at its hyphens where its column is narrow, and a name with another sign in the place of its hyphens could not
 * be copied: so the heading of a column of names is as long as the longest of them, and cannot be broken. */
export function table(heads: readonly string[], rows: readonly (readonly Markdown[])[]): Markdown {
  const widths = heads.map((_, column) =>
    rows
      .flatMap((row) => [...(row[column] ?? '').matchAll(names)].map(([, name = '']) => name.length))
      .reduce((widest, width) => Math.max(widest, width), 0),
  )
  const padded = (head: string, width: number): Markdown =>
    head === '' || width <= head.length ? plain(head) : made(`\`${head.padEnd(width, '\u00A0')}\``)
  const line = (cells: readonly Markdown[]) => `| ${cells.map(barred).join(' | ')} |`
  return made(
    [
      line(heads.map((head, column) => padded(head, widths[column] ?? 0))),
      `|${':--|'.repeat(heads.length)}`,
      ...rows.map(line),
    ].join('\n'),
  )
}
