import { code, joined, type Markdown, md, plain, prose } from '../../areas/common/markdown.ts'
import type { Value } from '../../job/model.ts'
import type { Band } from '../../quantity/band.ts'
import { formatBand, formatBoth, formatSi } from '../../quantity/format.ts'
import type { Kind, UnitSystem } from '../../quantity/kinds.ts'
import type { Shape } from '../../vocabulary/shape.ts'

/** Whether a value is limits of an amount. */
export const isBand = (value: unknown): value is Band =>
  typeof value === 'object' && value !== null && ('nominal' in value || 'low' in value || 'high' in value)

const otherSystem = (system: UnitSystem): UnitSystem => (system === 'metric' ? 'inch' : 'metric')

const both = (say: (system: UnitSystem) => string, system: UnitSystem): Markdown => {
  const own = say(system)
  const other = say(otherSystem(system))
  return prose(own === other ? own : `${own} (${other})`)
}

export const formatBandWith = (band: Band, kind: Kind, system: UnitSystem): Markdown =>
  both((shown) => formatBand(band, kind, shown), system)

/** Limits of a size lie close together: a digit more. */
const formatLimits = (low: number, high: number, kind: Kind, system: UnitSystem): Markdown =>
  both((shown) => `${formatSi(low, kind, shown, 5)} to ${formatSi(high, kind, shown, 5)}`, system)

const written = ({ node, origin, at }: Value<unknown>): Markdown => {
  const { start, end } = node.valueSpan
  return code((origin ?? at).section.text.slice(start, end).replace(/\s+/g, ' '))
}

/** A fact's value, amounts in both unit systems, limits worked out; whatever is not an amount, as it is written. */
export function formatValue(value: Value<unknown>, shape: Shape<unknown>, system: UnitSystem): Markdown {
  const { quantity: kind } = shape
  const of = value.value
  if (!kind || shape.choices) return written(value)
  if (typeof of === 'number') return prose(formatBoth(of, kind, system))
  if (!isBand(of)) return written(value)
  const { nominal, low, high } = of
  if (nominal === undefined) return formatBandWith(of, kind, system)
  const size = prose(formatBoth(nominal, kind, system))
  return low === undefined || high === undefined || low === high
    ? size
    : md`${size}, limits ${formatLimits(low, high, kind, system)}`
}

/** `maker, drawing "S-07"`: where a value is said to come from. */
export const formatProvenance = ({ words, texts }: NonNullable<Value<unknown>['provenance']>): Markdown =>
  joined([...words.map(plain), ...texts.map((text) => md`"${plain(text)}"`)], ' ')
