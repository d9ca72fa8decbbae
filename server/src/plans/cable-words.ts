import { formatNumber, formatSi } from '../quantity/format.ts'
import { saidShare } from '../quantity/said.ts'
import { saidLoad, saidLoading } from './amperes.ts'
import type { CableAmpacity } from './cable-ampacity.ts'
import type { CableLoading } from './cable-loading.ts'
import { markdownTable } from './markdown-table.ts'

/** How the ampacity came about: table, factors, number of conductors. */
export function ampacityWords({ ampacity, parallel }: Pick<CableAmpacity, 'ampacity' | 'parallel'>): string {
  if (!('amps' in ampacity)) return 'No table here has this size.'
  const factors = ampacity.factors.map(({ name, value }) => `${name} ${formatNumber(value, 3)}`).join(', ')
  const many = parallel === 1 ? '' : `, ${parallel} in parallel`
  return `${ampacity.table}${factors === '' ? '' : `; ${factors}`}${many}.`
}

/** For a hover: what the cable carries and has to carry. */
export function cableMarkdown(load: CableLoading): string {
  const { current, carries } =
    load.carries === undefined
      ? { current: saidLoad(load.current), carries: 'not known' }
      : saidLoading(load.current, load.carries)
  const rows = [
    [
      'current',
      current,
      `${load.currentFrom}${load.parallel === 1 ? '' : `; ${saidLoad(load.perConductor)} in each conductor`}`,
    ],
    ['carries', carries, ampacityWords(load)],
    [
      'voltage drop',
      `${formatSi(load.dropVolts, 'voltage', 'metric', 3)}${load.drop === undefined ? '' : ` (${saidShare(load.drop)})`}`,
      load.dropLimit === undefined
        ? 'what is allowed cannot be used as written'
        : `${saidShare(load.dropLimit)} allowed, ${load.dropLimitFrom}`,
    ],
  ]
  return [
    `**${load.system === 'dc' ? 'DC' : 'Three-phase'} cable**`,
    '',
    markdownTable(['', '', ''], rows),
    '',
    `Source: ${load.sources.join('; ')}.`,
    ...(load.assumptions.length > 0 ? ['', 'Assumed:', ...load.assumptions.map((line) => `- ${line}`)] : []),
  ].join('\n')
}
