import { code, type Markdown, md, ours, paragraphs, prose } from '../../areas/common/markdown.ts'
import type { Block, Value } from '../../job/model.ts'
import { formatNumber, formatSi } from '../../quantity/format.ts'
import { readQuantity } from '../../quantity/quantity.ts'
import type { FactNode, LineNode, Part, Span } from '../../syntax/tree.ts'
import type { Form } from '../../vocabulary/form.ts'
import type { Shape } from '../../vocabulary/shape.ts'
import { slotAt } from '../completion/form-fits.ts'

type Written = FactNode | LineNode

const holds = (outer: Span, inner: Span): boolean => outer.start <= inner.start && inner.end <= outer.end

/** A part of a value: an amount in its other units, and what the part says where several make the value. */
export function partOfValue(
  part: Part,
  item: Written,
  shape: Shape<unknown> | undefined,
  value: Value<unknown> | undefined,
): Markdown {
  return paragraphs(
    amountMarkdown(part, item),
    toleranceMarkdown(part),
    limitMarkdown(part, item),
    angleMarkdown(part, value) ?? slotMarkdown(part, item, shape?.forms ?? []),
  )
}

/** An amount in the other units it would be shown in. Its unit may stand once for several. */
function amountMarkdown(part: Part, item: Written): Markdown | undefined {
  if (part.type !== 'amount') return undefined
  const named = part.unit?.text ?? unitBehind(part, item)
  const read = named === undefined ? undefined : readQuantity(part.number, named)
  if (!read?.ok || !read.value.kind) return undefined
  const { si, kind, unit } = read.value
  const shown = new Set((['metric', 'inch'] as const).map((system) => formatSi(si, kind, system)))
  const others = [...shown].filter((words) => unit === undefined || !words.endsWith(` ${unit.name}`))
  return others.length === 0
    ? undefined
    : md`${code(`${part.number} ${named}`)} is ${prose(others.join(', '))}`
}

function unitBehind(part: Part, item: Written): string | undefined {
  const range = partsOf(item).find((whole) => whole.type === 'range' && holds(whole.span, part.span))
  return range?.type === 'range' && range.high.type === 'amount' ? range.high.unit?.text : undefined
}

const partsOf = (item: Written): readonly Part[] => item.entries.flatMap(({ parts }) => parts)

function toleranceMarkdown(part: Part): Markdown | undefined {
  if (part.type !== 'two-sided') return undefined
  const unit = part.unit ? ` ${part.unit.text}` : ''
  return md`${code(`${part.text}${unit}`)}: how far it may be above and below the size.`
}

/** Which end of a range, or how far to either side, an amount is. */
function limitMarkdown(part: Part, item: Written): Markdown | undefined {
  for (const whole of partsOf(item)) {
    if (whole.type === 'range' && part !== whole && holds(whole.span, part.span))
      return holds(whole.low.span, part.span) ? md`The lower limit.` : md`The upper limit.`
    if (whole.type === 'plus-minus' && holds(whole.span, part.span))
      return md`How far it may be above or below the size.`
  }
  return undefined
}

function slotMarkdown(part: Part, { entries }: Written, forms: readonly Form[]): Markdown | undefined {
  const i = entries.findIndex(({ parts }) => parts.includes(part))
  const slot = slotAt(forms, entries, [i, entries[i]?.parts.indexOf(part) ?? -1])
  return slot && (part.type === 'word' ? md`${code(part.text)}: ${ours(slot.doc)}` : ours(slot.doc))
}

/** A place round the shaft in degrees, for one written as a word. */
function angleMarkdown(part: Part, value: Value<unknown> | undefined): Markdown | undefined {
  if (part.type !== 'word' || !Array.isArray(value?.value)) return undefined
  const list = value.value as readonly { readonly angle?: number; readonly span?: Span }[]
  const read = list.find(({ span }) => span && holds(span, part.span))
  return read?.angle === undefined
    ? undefined
    : md`${code(part.text)} is ${prose(formatNumber((read.angle * 180) / Math.PI))} degrees clockwise from top, looking forward.`
}

/** What a block's heading says besides its name. */
export const headingWords = (block: Block, part: Part): Markdown | undefined =>
  block.kind === 'move' && part.type === 'word' && part.text === 'after'
    ? paragraphs(md`**after**`, md`The last reading before the feet were moved.`)
    : undefined
