import { formatAboutIn, formatSi } from '../../quantity/format.ts'
import { formatShare } from '../../quantity/format-measures.ts'
import type { Lookup } from '../../store/lookup.ts'
import { figuresMarkdown, formulasMarkdown } from '../common/figure-words.ts'
import { headed, list, type Markdown, md, paragraphs, plain, prose, table } from '../common/markdown.ts'
import type { Ground, View } from '../common/view.ts'
import { hullFigures } from './figures/hull.ts'
import { serviceFigures } from './figures/others.ts'
import { serviceEnergy, serviceLegs } from './plans/service-energy.ts'
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

const legHeads = ['point', 'boat speed', 'time', 'power', 'energy', 'of the bank']

/** The points of the service one by one, and all together. */
function legsMarkdown(lookup: Lookup): Markdown | undefined {
  const { block, system } = lookup
  const [outcome, total] = [serviceLegs(block, lookup), serviceEnergy(block, lookup)]
  if (!outcome.ok) return undefined
  const row = (
    name: Markdown,
    { boatSpeed, time, power, energy, share }: Partial<(typeof outcome.value.legs)[number]>,
  ): readonly Markdown[] => [
    name,
    ...[
      boatSpeed === undefined ? '' : formatSi(boatSpeed, 'speed', system, 3),
      time === undefined ? '' : formatAboutIn(time, 'h'),
      power === undefined ? '' : formatSi(power, 'power', system, 3),
      energy === undefined ? '' : formatAboutIn(energy, 'kWh'),
      share === undefined ? '' : formatShare(share, 3),
    ].map(prose),
  ]
  const legs = outcome.value.legs.map((leg) => row(plain(leg.name), leg))
  return paragraphs(
    table(legHeads, total.ok && legs.length > 1 ? [...legs, row(md`all`, total.value)] : legs),
    prose('Of the bank: share of what may be used, the reserve kept, until the first bank is done.'),
  )
}

function serviceMarkdown(lookup: Lookup, ground: Ground): Markdown | undefined {
  const figures = figuresMarkdown(headed('Service', lookup.block.name), serviceFigures, lookup, ground)
  return figures && paragraphs(figures, legsMarkdown(lookup))
}

export const views: readonly View[] = [
  { on: 'hull', hover: hullMarkdown },
  { on: 'service', hover: serviceMarkdown },
]
