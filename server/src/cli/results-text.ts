import {
  distinct,
  formatAmount,
  formatAmountLimit,
  formatKey,
  formatMargin,
} from '../areas/common/figure-words.ts'
import type { Result } from '../areas/common/result.ts'
import { isResult } from '../areas/common/result.ts'
import type { UnitSystem } from '../quantity/kinds.ts'
import type { BlockResults, FileResults } from './file-results.ts'
import type { Line, Piece } from './terminal.ts'

const colours = { outside: 'red', undecided: 'yellow', within: 'dim' } as const

/** The results of a file: a table for each block, with what they depend on and where they are from. */
export function resultsText({ file, job, errors, blocks }: FileResults): readonly Line[] {
  const said = [job?.vessel, job?.title].filter((text) => text !== undefined && text !== null)
  const revision = job?.revision ? [`revision ${job.revision}${job.status ? ` (${job.status})` : ''}`] : []
  const about = [...said, ...revision].join(', ')
  return [
    [['bold', file], about === '' ? '' : `  ${about}`],
    ...(errors > 0
      ? [
          [
            'red' as const,
            `${errors} ${errors === 1 ? 'error' : 'errors'}: results may be missing or wrong. Run \`shaftwright check\`.`,
          ] as const,
        ].map((piece): Line => [piece])
      : []),
    ...(blocks.length === 0 ? ['No results.'] : []),
    '',
    ...blocks.flatMap(blockText),
    ...(blocks.length > 0
      ? [
          '± is the expanded uncertainty (k = 2). Up, starboard and forward are positive; a margin is positive inside its limit.',
          '',
        ]
      : []),
  ]
}

function blockText({ kind, at, system, results }: BlockResults): readonly Line[] {
  const known = results.filter(isResult)
  const rows = known.map((result) => rowOf(result, system))
  const widths = [0, 1, 2, 3].map((column) => Math.max(0, ...rows.map((row) => row[column]?.length ?? 0)))
  const why = distinct(results.flatMap((one) => (isResult(one) ? [] : [`${one.figure.title}: ${one.fault}`])))
  const assumptions = distinct(known.flatMap(({ amount }) => amount.assumptions ?? []))
  const sources = distinct(
    known.flatMap(({ figure, amount }) => [figure.source.text, ...(amount.sources ?? [])]),
  )
  const doubts = distinct(known.flatMap(({ amount }) => amount.doubt ?? []))
  const limits = distinct(
    known.flatMap(({ figure, amount }) =>
      amount.limitFrom === undefined ? [] : [`${figure.title}: ${amount.limitFrom}`],
    ),
  )
  const heading = at.block === kind ? kind : `${at.block} (${kind})`
  return [
    [['bold', heading], `  ${at.file}:${at.range.start.line + 1}`],
    ...known.map((result, i): Line => {
      const cells = (rows[i] ?? []).map((cell, column) => cell.padEnd(widths[column] ?? 0))
      const verdict: readonly Piece[] = result.verdict
        ? [`  `, [colours[result.verdict], result.verdict]]
        : []
      const doubt: readonly Piece[] = result.amount.doubt === undefined ? [] : [`  in doubt`]
      const line = `  ${cells.join('  ')}`
      return [verdict.length + doubt.length > 0 ? line : line.trimEnd(), ...verdict, ...doubt]
    }),
    ...why.map((words) => `  ${words}`),
    ...doubts.map((words) => `  In doubt: ${words}`),
    ...(limits.length > 0 ? [`  Limits: ${limits.join('; ')}.`] : []),
    ...(assumptions.length > 0 ? [`  Assumed: ${assumptions.join('; ')}.`] : []),
    ...(sources.length > 0 ? [[['dim', `  Source: ${sources.join('; ')}.`] as const]] : []),
    '',
  ]
}

/** Title, value, limit, margin. */
function rowOf({ figure, amount, margin }: Result, system: UnitSystem): readonly string[] {
  const key = formatKey(figure, amount, system)
  const { limit } = amount
  return [
    key === '' ? figure.title : `${figure.title}, ${key}`,
    formatAmount(figure, amount, system),
    limit ? `limit ${formatAmountLimit(figure, { ...amount, limit }, system)}` : '',
    margin ? `margin ${formatMargin(figure, amount, margin, system)}` : '',
  ]
}
