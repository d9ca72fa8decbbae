import type colours from 'picocolors'
import type { FindingJson } from './schemas.ts'

export type Colours = ReturnType<typeof colours.createColors>

export const linesOf = (text: string): readonly string[] => text.split(/\r\n|\n|\r/)

/** A job file must not steer the terminal: control signs and changes of direction are shown, not sent. */
const harmless = (text: string): string =>
  text.replace(/[\p{Cc}\u2028-\u202E\u2066-\u2069]/gu, (sign) => {
    const code = sign.charCodeAt(0)
    return code < 0x20 ? String.fromCharCode(0x2400 + code) : '\uFFFD'
  })
const shown = (text: string): string => harmless(text.replaceAll('\t', '    '))

// Wide and empty signs would push the carets aside: they are given the room they take on a terminal.
const wide =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Emoji_Presentation}\u3000-\u303E\uFF01-\uFF60\uFFE0-\uFFE6]/u
const empty = /^[\p{M}\p{Cf}]+$/u
const signs = new Intl.Segmenter('en', { granularity: 'grapheme' })
const room = (text: string): number =>
  /^[ -~]*$/.test(text)
    ? text.length
    : [...signs.segment(text)].reduce(
        (sum, { segment }) => sum + (wide.test(segment) ? 2 : empty.test(segment) ? 0 : 1),
        0,
      )

/** Of a longer line the part around the mark is shown. */
const longest = 200

const mark = { error: 'red', warning: 'yellow', information: 'cyan' } as const

/** A finding for a terminal: where, what, the line with carets under it, what to do, and where the rule is from. */
export function report(finding: FindingJson, lines: readonly string[], colours: Colours): string {
  const { start, end } = finding.range
  const line = lines[start.line] ?? ''
  const from = Math.max(0, Math.min(start.character - longest / 2, line.length - longest))
  const to = Math.min(line.length, from + longest)
  const until = end.line === start.line ? Math.min(end.character, to) : to
  const before = `${from > 0 ? '…' : ''}${shown(line.slice(from, start.character))}`
  const marked = shown(line.slice(start.character, until))
  const rest = `${shown(line.slice(Math.max(until, start.character), to))}${to < line.length ? '…' : ''}`
  const colour = colours[mark[finding.severity]]
  const number = String(start.line + 1)
  const margin = ' '.repeat(number.length)
  return [
    `${colours.bold(placed(finding))}  ${colour(finding.severity)}  ${finding.check}`,
    `${number} | ${before}${marked}${rest}`,
    `${margin} | ${' '.repeat(room(before))}${colour('^'.repeat(Math.max(1, room(marked))))}`,
    `  ${harmless(finding.message)}`,
    `  ${harmless(finding.todo)}`,
    ...(finding.related ?? []).map((one) => `  ${placed(one)}  ${harmless(one.message)}`),
    ...(finding.assumptions?.length ? [`  Assumed: ${harmless(finding.assumptions.join('; '))}.`] : []),
    colours.dim(`  Source: ${finding.source}.`),
  ].join('\n')
}

const placed = ({ file, range: { start } }: Pick<FindingJson, 'file' | 'range'>): string =>
  harmless(`${file}:${start.line + 1}:${start.character + 1}`)

const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`

export const more = (n: number, file: string): string =>
  `${count(n, 'more finding')} in ${harmless(file)}: mend these first, or use --format json`

export const severities = ['error', 'warning', 'information'] as const
export type Counts = Readonly<Record<(typeof severities)[number], number>>

export function summary(files: number, { error, warning, information }: Counts, colours: Colours): string {
  const found = `${count(error, 'error')}, ${count(warning, 'warning')}, ${information} for information`
  return colours.bold(`${count(files, 'file')}: ${found}.`)
}
