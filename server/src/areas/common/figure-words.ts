import type { Band } from '../../quantity/band.ts'
import type { Bound, Margin, Verdict } from '../../quantity/conformity.ts'
import { formatBandWith, formatNumber, formatSi, inUnit, shownUnit } from '../../quantity/format.ts'
import {
  formatLength,
  formatLimit,
  formatShare,
  formatSlope,
  formatUncertain,
  formatUncertainSlope,
} from '../../quantity/format-measures.ts'
import type { UnitSystem } from '../../quantity/kinds.ts'
import { findUnit, type Unit } from '../../quantity/units.ts'
import type { Lookup } from '../../store/lookup.ts'
import { decimalsOfLoading, formatCarried, formatLoad } from './amperes.ts'
import type { Amount, Figure } from './figure.ts'
import { list, type Markdown, md, paragraphs, prose, table } from './markdown.ts'
import { isResult, resultsOf } from './result.ts'
import type { Ground } from './view.ts'

/** As many significant digits as tell a value from its limits, from three up. */
const digitsTried = [3, 4, 5, 6, 7, 8] as const

function digitsFor({ value, limit }: Amount, figure: Shown, system: UnitSystem): number {
  const ends = [limit?.low, limit?.high].filter((end) => end !== undefined)
  const unit = ownUnit(figure) ?? shownUnit(figure.kind, value, system)
  const rounded = (si: number, digits: number) => Number((unit ? inUnit(si, unit) : si).toPrecision(digits))
  const isTold = (digits: number) =>
    ends.every(
      (end) =>
        value === end || Math.sign(rounded(value, digits) - rounded(end, digits)) === Math.sign(value - end),
    )
  return digitsTried.find(isTold) ?? 8
}

interface Shown {
  readonly kind: Figure['kind']
  readonly unit?: string | undefined
}

const formatOne = (si: number, { kind, unit }: Shown, system: UnitSystem, digits: number): string => {
  if (unit === 'mrad') return formatSlope(si)
  if (unit === '%') return formatShare(si, digits)
  const own = ownUnit({ kind, unit })
  return own ? withUnit(formatNumber(inUnit(si, own), digits), own) : formatSi(si, kind, system, digits)
}

/** `1 flat`, `3.5 flats`; a symbol has no plural. */
function withUnit(number: string, { name, aliases }: Unit): string {
  const plural = `${name}s`
  return `${number} ${number !== '1' && number !== '-1' && aliases.includes(plural) ? plural : name}`
}

/** A figure that names its unit is shown in it; a length in what the job is written in, but a way at sea in nautical miles. */
const ownUnit = ({ kind, unit }: Shown): Unit | undefined =>
  unit === undefined || (kind === 'length' && unit !== 'nmi') ? undefined : findUnit(unit)

const bounds: Readonly<Record<Bound, string>> = { 'at-least': 'at least', 'less-than': 'less than' }

/** A current to the safe side, and so that it shows on which side of its limit it is: what must be reached is rounded up, what may be reached
 * down. */
function formatCurrents({ value, limit }: Amount): {
  readonly value: string
  readonly end: (si: number) => string
} {
  if (limit?.low !== undefined && limit.high !== undefined) {
    const show = (si: number) =>
      formatSi(si, 'current', 'metric', digitsFor({ value, limit }, { kind: 'current' }, 'metric'))
    return { value: show(value), end: show }
  }
  if (limit?.low !== undefined) {
    const decimals = decimalsOfLoading(limit.low, value)
    return { value: formatCarried(value, decimals), end: (si) => formatLoad(si, decimals) }
  }
  const decimals = limit?.high === undefined ? 0 : decimalsOfLoading(value, limit.high)
  return { value: formatLoad(value, decimals), end: (si) => formatCarried(si, decimals) }
}

/** `0.26 ± 0.02 mm`, `at least 475 A`. */
export function formatAmount(figure: Shown, amount: Amount, system: UnitSystem): string {
  const { value, uncertainty, bound } = amount
  const sure = uncertainty === undefined ? undefined : { value, standard: uncertainty / 2 }
  if (sure && figure.kind === 'length') return formatUncertain(sure, system)
  if (sure && figure.unit === 'mrad') return formatUncertainSlope(sure)
  const words =
    figure.kind === 'current'
      ? formatCurrents(amount).value
      : formatOne(value, figure, system, digitsFor(amount, figure, system))
  const known = bound ? `${bounds[bound]} ${words}` : words
  return uncertainty === undefined ? known : `${known} ± ${formatOne(uncertainty, figure, system, 2)}`
}

/** `at most 0.10 mm`, `24 mm to 29 mm`; `at least 253 A, at most 160 A` where nothing keeps both. */
export function formatAmountLimit(
  figure: Shown,
  amount: Amount & { readonly limit: Band },
  system: UnitSystem,
): string {
  const { low, high } = amount.limit
  if (low === undefined || high === undefined || low <= high) return formatBandOf(figure, amount, system)
  return [{ low }, { high }].map((limit) => formatBandOf(figure, { ...amount, limit }, system)).join(', ')
}

function formatBandOf(figure: Shown, amount: Amount & { readonly limit: Band }, system: UnitSystem): string {
  if (figure.kind === 'current') return formatBandWith(amount.limit, formatCurrents(amount).end)
  const digits = digitsFor(amount, figure, system)
  const isMeasured = amount.uncertainty !== undefined && figure.kind === 'length'
  return formatBandWith(amount.limit, (si) =>
    isMeasured ? formatLimit(si, system) : formatOne(si, figure, system, digits),
  )
}

/** `128 A (63 %)`, `-0.02 mm (-20 %)`. */
export function formatMargin(
  figure: Shown,
  amount: Amount,
  { size, share }: Margin,
  system: UnitSystem,
): string {
  const isMeasured = amount.uncertainty !== undefined && figure.kind === 'length'
  // A difference of two temperatures has no zero of its own.
  const shown = figure.kind === 'temperature' ? { ...figure, unit: 'K' } : figure
  const words = isMeasured ? formatLength(size, system) : formatOne(size, shown, system, 3)
  return share === undefined ? words : `${words} (${formatShare(share, 2)})`
}

/** `aft-port`, `0.85 m`; empty where the figure has one amount. */
export function formatKey({ over }: Figure, { key = {}, at }: Amount, system: UnitSystem): string {
  return [...Object.values(key), ...(over && at !== undefined ? [formatSi(at, over.kind, system)] : [])].join(
    ', ',
  )
}

/** Each once, in their order. */
export const distinct = (texts: readonly string[]): readonly string[] => [...new Set(texts)]

/** What the figures of a block come to, as a table; undefined where they come to nothing. */
export function figuresMarkdown(
  heading: Markdown,
  figures: readonly Figure[],
  lookup: Lookup,
  ground: Ground,
): Markdown | undefined {
  const { system } = lookup
  const all = resultsOf(figures, lookup, ground)
  const results = all.filter(isResult)
  const faults = distinct(all.flatMap((one) => (isResult(one) ? [] : [one.fault])))
  if (results.length === 0) return faults.length > 0 ? paragraphs(...faults.map(prose)) : undefined
  const rows = results.map(({ figure, amount, verdict }) => {
    const key = formatKey(figure, amount, system)
    return [
      prose(key === '' ? figure.title : `${figure.title}, ${key}`),
      prose(formatAmount(figure, amount, system)),
      limitCell(figure, amount, verdict, system),
      prose([amount.from ?? '', amount.doubt ?? ''].filter(Boolean).join('; ')),
    ]
  })
  const sources = distinct(
    results.flatMap(({ figure, amount }) => [figure.source.text, ...(amount.sources ?? [])]),
  )
  const assumptions = distinct(results.flatMap(({ amount }) => amount.assumptions ?? []))
  return paragraphs(
    md`**${heading}**`,
    table(['', 'result', 'limit', 'from'], rows),
    ...faults.map(prose),
    prose(`Source: ${sources.join('; ')}.`),
    assumptions.length > 0 ? paragraphs(md`Assumed:`, list(assumptions.map(prose))) : undefined,
    formulasMarkdown(results.map(({ figure }) => figure)),
  )
}

/** How figures are worked out. */
export function formulasMarkdown(figures: readonly Figure[]): Markdown | undefined {
  const formulas = new Map<string, readonly string[]>()
  for (const { title, formula } of figures)
    if (formula !== undefined) formulas.set(formula, distinct([...(formulas.get(formula) ?? []), title]))
  const [only, more] = formulas.keys()
  if (only === undefined) return undefined
  return more === undefined
    ? prose(`Formula: ${only}`)
    : paragraphs(
        md`Formulas:`,
        list([...formulas].map(([formula, titles]) => prose(`${titles.join(', ')}: ${formula}`))),
      )
}

function limitCell(
  figure: Figure,
  amount: Amount,
  verdict: Verdict | undefined,
  system: UnitSystem,
): Markdown {
  const { limit, limitFrom } = amount
  if (!limit || !verdict) return md``
  const words = prose(formatAmountLimit(figure, { ...amount, limit }, system))
  const source = limitFrom === undefined ? md`` : md` (${prose(limitFrom)})`
  return verdict === 'within' ? md`${words}${source}` : md`${words}${source}: **${prose(verdict)}**`
}
