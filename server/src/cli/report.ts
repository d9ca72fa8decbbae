import type colours from 'picocolors'
import type { CheckJson, FindingJson } from './schemas.ts'

export type Colours = ReturnType<typeof colours.createColors>

/** A tab and a wide sign would push the carets aside: they are given the room they take on a terminal. */
const wide =
  /\p{Script=Han}|\p{Script=Hiragana}|\p{Script=Katakana}|\p{Script=Hangul}|\p{Extended_Pictographic}/u
const room = (text: string): number =>
  [...text].reduce((sum, sign) => sum + (wide.test(sign) ? 2 : /\p{M}/u.test(sign) ? 0 : 1), 0)
const untabbed = (text: string): string => text.replaceAll('\t', '    ')

const mark = { error: 'red', warning: 'yellow', information: 'cyan' } as const

/** A finding for a terminal: where, what, the line with carets under it, what to do, and where the rule is from. */
export function report(finding: FindingJson, text: string, colours: Colours): string {
  const { start, end } = finding.range
  const line = text.split(/\r\n|\n|\r/)[start.line] ?? ''
  const until = end.line === start.line ? end.character : line.length
  const before = untabbed(line.slice(0, start.character))
  const marked = untabbed(line.slice(start.character, until))
  const colour = colours[mark[finding.severity]]
  const number = String(start.line + 1)
  const margin = ' '.repeat(number.length)
  const shown = line.length > 300 ? `${line.slice(0, 300)}…` : line
  return [
    `${colours.bold(`${finding.file}:${number}:${start.character + 1}`)}  ${colour(finding.severity)}  ${finding.check}`,
    ...(start.character > 300
      ? []
      : [
          `${number} | ${untabbed(shown)}`,
          `${margin} | ${' '.repeat(room(before))}${colour('^'.repeat(Math.max(1, Math.min(room(marked), 300))))}`,
        ]),
    `  ${finding.message}`,
    `  ${finding.todo}`,
    ...(finding.related ?? []).map(
      ({ file, range, message }) =>
        `  ${file}:${range.start.line + 1}:${range.start.character + 1}  ${message}`,
    ),
    ...(finding.assumptions?.length ? [`  Assumed: ${finding.assumptions.join('; ')}.`] : []),
    colours.dim(`  Source: ${finding.source}.`),
  ].join('\n')
}

const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`

export function summary({ files, findings }: CheckJson, colours: Colours): string {
  const of = (severity: FindingJson['severity']): number =>
    findings.filter((finding) => finding.severity === severity).length
  const found = `${count(of('error'), 'error')}, ${count(of('warning'), 'warning')}, ${of('information')} for information`
  return colours.bold(`${count(files.length, 'file')}: ${found}.`)
}
