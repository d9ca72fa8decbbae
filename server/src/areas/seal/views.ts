import { factOf } from '../../job/model.ts'
import type { Verdict } from '../../quantity/conformity.ts'
import type { Lookup } from '../../store/lookup.ts'
import { figuresMarkdown, formatAmount, formatAmountLimit } from '../common/figure-words.ts'
import { type Markdown, md, prose } from '../common/markdown.ts'
import { type Result, resultOf } from '../common/result.ts'
import type { View } from '../common/view.ts'
import { compression, figures } from './figures.ts'

/** `compressed 27 mm`. */
function found({ amount }: Result, { system }: Lookup): string {
  const size = { ...amount, value: Math.abs(amount.value) }
  return `${amount.value < 0 ? 'stretched' : 'compressed'} ${formatAmount(compression, size, system)}`
}

/** `compressed 27 mm, specified 24 mm to 29 mm: within`. */
function formatFit(result: Result, lookup: Lookup, shown: (verdict: Verdict) => Markdown): Markdown {
  const { amount, verdict } = result
  const { limit } = amount
  if (!limit || !verdict) return prose(found(result, lookup))
  const wanted = formatAmountLimit(compression, { ...amount, limit }, lookup.system)
  return md`${prose(`${found(result, lookup)}, specified ${wanted}:`)} ${shown(verdict)}`
}

const strong = (verdict: Verdict): Markdown =>
  verdict === 'within' ? prose(verdict) : md`**${prose(verdict)}**`

export const views: readonly View[] = [
  {
    on: 'seal',
    hover: (lookup, ground) => {
      const result = resultOf(compression, lookup)
      return (
        result && figuresMarkdown(md`Bellows ${formatFit(result, lookup, prose)}`, figures, lookup, ground)
      )
    },
    inDrive: (lookup) => {
      const result = resultOf(compression, lookup)
      return result ? [[md`seal`, formatFit(result, lookup, strong)]] : []
    },
    hints: (lookup) => {
      const fitted = factOf(lookup.block, 'seal.fitted-length')
      const result = resultOf(compression, lookup)
      return fitted && !fitted.origin && result?.verdict === 'within'
        ? [
            {
              setting: 'results',
              at: fitted.at.span.end,
              words: `(${found(result, lookup)})`,
              tooltip: `${result.amount.from ?? ''}. Source: ${compression.source.text}.`,
            },
          ]
        : []
    },
  },
]
