import type { Lookup } from '../../store/lookup.ts'
import { formulasMarkdown } from '../common/figure-words.ts'
import { list, type Markdown, md, paragraphs, prose, table } from '../common/markdown.ts'
import type { View } from '../common/view.ts'
import { hullFigures } from './figures/hull.ts'
import { energyPlan, powerPlan } from './plans/whole-boat.ts'
import { heads, powerRows, topWords } from './power-rows.ts'
import { balance, energyBalance } from './sources.ts'

/** The power table. */
function hullMarkdown(lookup: Lookup): Markdown | undefined {
  const { block, system } = lookup
  const [power, energy] = [powerPlan(block, lookup), energyPlan(block, lookup)]
  if (!power.ok) return prose(`No power table: ${power.fault.words}`)
  const rows = powerRows(power.value, energy.ok ? energy.value : undefined, system)
  const assumptions = energy.ok ? energy.value.assumptions : power.value.assumptions
  return paragraphs(
    md`**Power table**`,
    rows.length > 0
      ? table(
          heads,
          rows.map((row) => row.map(prose)),
        )
      : undefined,
    prose(topWords(power.value, system)),
    energy.ok ? undefined : prose(`Endurance and range: ${energy.fault.words}`),
    prose(`Source: ${balance.text}; ${energyBalance.text}.`),
    assumptions.length > 0 ? paragraphs(md`Assumed:`, list(assumptions.map(prose))) : undefined,
    formulasMarkdown(hullFigures),
  )
}

export const views: readonly View[] = [{ on: 'hull', hover: hullMarkdown }]
