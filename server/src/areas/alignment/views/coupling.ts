import { formatLength, formatLimit } from '../../../quantity/format-measures.ts'
import { formulasMarkdown } from '../../common/figure-words.ts'
import { code, headed, md, paragraphs, prose, table } from '../../common/markdown.ts'
import type { View } from '../../common/view.ts'
import { gapVariation } from '../figures/reading.ts'
import { briefVerdict } from '../plans/brief-words.ts'
import { lastReading } from '../plans/moves.ts'
import { worked } from './reading.ts'

/** What the coupling allows, and how the last reading stands to that. */
export const coupling: View = {
  on: 'coupling',
  hover: ({ block, from, system }) => {
    const last = block.parent && lastReading(block.parent)
    const correction = last && worked(from(last))
    if (!correction) return undefined
    const { gapVariation: gaps, offset } = correction
    const judged = { 'gap variation': gaps, ...(offset && { offset }) }
    return paragraphs(
      md`**${headed('reading', last.name, code)}: ${prose(briefVerdict(correction, system))}**`,
      table(
        ['', 'last reading', 'limit', 'limit from'],
        Object.entries(judged).map(([what, { value, limit, limitFrom }]) =>
          [what, formatLength(value.value, system), formatLimit(limit, system), limitFrom].map(prose),
        ),
      ),
      formulasMarkdown([gapVariation]),
    )
  },
}
