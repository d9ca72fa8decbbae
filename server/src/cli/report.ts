import { harmless } from '../syntax/harmless.ts'
import type { FindingJson } from './schemas.ts'
import type { Line } from './terminal.ts'

export const linesOf = (text: string): readonly string[] => text.split(/\r\n|\n|\r/)

/** As it will stand on the terminal, so that the carets stand below it. */
const shown = (text: string): string => harmless(text.replaceAll('\t', '    '))

// Wide and empty signs would push the carets aside: they are given the room they take on a terminal.
const wideSign =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Emoji_Presentation}\u3000-\u303E\uFF01-\uFF60\uFFE0-\uFFE6]/u
const zeroWidth = /^[\p{M}\p{Cf}]+$/u
const signs = new Intl.Segmenter('en', { granularity: 'grapheme' })
const columnsOf = (text: string): number =>
  /^[ -~]*$/.test(text)
    ? text.length
    : [...signs.segment(text)].reduce(
        (sum, { segment }) => sum + (wideSign.test(segment) ? 2 : zeroWidth.test(segment) ? 0 : 1),
        0,
      )

/** Of a longer line the part around the mark is shown. */
const longest = 200

const mark = { error: 'red', warning: 'yellow', information: 'cyan' } as const

/** A finding: where, what, the line with carets under it, what to do, and where the rule is from. */
export function report(finding: FindingJson, lines: readonly string[]): readonly Line[] {
  const colour = mark[finding.severity]
  return [
    [['bold', placed(finding)], '  ', [colour, finding.severity], `  ${finding.check}`],
    ...excerpt(finding, lines),
    `  ${finding.message}`,
    ...(finding.detail === undefined ? [] : [`  ${finding.detail}`]),
    `  ${finding.todo}`,
    ...(finding.related ?? []).map((one) => `  ${placed(one)}  ${one.message}`),
    ...(finding.assumptions?.length ? [`  Assumed: ${finding.assumptions.join('; ')}.`] : []),
    [['dim', `  Source: ${finding.source}.`]],
    '',
  ]
}

/** The line of a finding with carets under it. A file that is not read has no lines. */
function excerpt(
  { severity, range: { start, end } }: FindingJson,
  lines: readonly string[],
): readonly Line[] {
  const line = lines[start.line]
  if (line === undefined) return []
  const from = Math.max(0, Math.min(start.character - longest / 2, line.length - longest))
  const to = Math.min(line.length, from + longest)
  const until = end.line === start.line ? Math.min(end.character, to) : to
  const before = `${from > 0 ? '…' : ''}${shown(line.slice(from, start.character))}`
  const marked = shown(line.slice(start.character, until))
  const rest = `${shown(line.slice(Math.max(until, start.character), to))}${to < line.length ? '…' : ''}`
  const number = String(start.line + 1)
  const margin = ' '.repeat(number.length)
  return [
    `${number} | ${before}${marked}${rest}`,
    [
      `${margin} | ${' '.repeat(columnsOf(before))}`,
      [mark[severity], '^'.repeat(Math.max(1, columnsOf(marked)))],
    ],
  ]
}

const placed = ({ file, range: { start } }: Pick<FindingJson, 'file' | 'range'>): string =>
  `${file}:${start.line + 1}:${start.character + 1}`

const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`

export const more = (n: number, file: string): string =>
  `${count(n, 'more finding')} in ${file}: fix these first, or use --format json`

export const severities = ['error', 'warning', 'information'] as const
export type Counts = Readonly<Record<(typeof severities)[number], number>>

export function summary(files: number, { error, warning, information }: Counts): Line {
  const found = `${count(error, 'error')}, ${count(warning, 'warning')}, ${information} for information`
  return [['bold', `${count(files, 'file')}: ${found}.`]]
}
