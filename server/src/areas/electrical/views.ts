import { factOf } from '../../job/model.ts'
import { formatSi } from '../../quantity/format.ts'
import type { Lookup } from '../../store/lookup.ts'
import { turnsOfMap } from '../common/ahead-turns.ts'
import { batteryStaysLive } from '../common/dangers.ts'
import { figuresMarkdown } from '../common/figure-words.ts'
import { code, headed, joined, type Markdown, md, paragraphs, prose, table } from '../common/markdown.ts'
import type { View } from '../common/view.ts'
import { figures } from './figures/index.ts'
import { canCarry } from './plans/cable-ampacity.ts'
import { cableLoading } from './plans/cable-loading.ts'
import { ratingOf } from './plans/cable-protection.ts'
import { ampacityWords, briefLoad } from './plans/cable-words.ts'
import { heatAround } from './plans/fuse-ambient.ts'
import { sizesTried } from './plans/sizes-tried.ts'

const systems = { dc: 'DC cable', 'three-phase': 'Three-phase cable' } as const

const notCarried = {
  yes: md``,
  no: md`: **overloaded**`,
  'not-shown': md`: **not in the tables**`,
} as const

/** How many sizes that do not pass are shown before the one that does. */
const shownSizes = 3

/** The smallest conductor that passes, and why those before it do not. */
function sizesMarkdown(lookup: Lookup): Markdown | '' {
  const rows = sizesTried(lookup)
    .slice(-1 - shownSizes)
    .map(({ shown, faults }) => [
      prose(shown),
      faults.length === 0 ? prose('the smallest that passes') : joined(faults.map(prose), '; '),
    ])
  return rows.length === 0 ? '' : table(['Conductor', 'Result'], rows)
}

const cable: View = {
  on: 'cable',
  hover: (lookup, ground) => {
    const loading = cableLoading(lookup.block, lookup)
    if (!loading.ok) return prose(loading.fault.words)
    const figured = figuresMarkdown(prose(systems[loading.value.system]), figures, lookup, ground)
    return figured && paragraphs(figured, sizesMarkdown(lookup))
  },
  inDrive: (lookup) => {
    const { block } = lookup
    const loading = cableLoading(block, lookup)
    if (!loading.ok) return []
    const { current } = loading.value
    const words = md`${prose(briefLoad(loading.value))}${notCarried[canCarry(loading.value, current)]}`
    return [[headed('cable', block.name, code), words]]
  },
  hints: (lookup) => {
    const loading = cableLoading(lookup.block, lookup)
    // A cable that is too thin, or that no table shows to be thick enough, is a finding, which says so.
    if (!loading.ok || canCarry(loading.value, loading.value.current) !== 'yes') return []
    const { currentFrom, sources } = loading.value
    return [
      {
        setting: 'cables',
        at: lookup.block.node.headSpan.end,
        words: briefLoad(loading.value),
        tooltip: `Current: ${currentFrom}. Can carry: ${ampacityWords(loading.value)} Source: ${sources.join('; ')}.`,
      },
    ]
  },
}

const ratings = {
  'below-load': 'too small for the load',
  within: 'between load and cable',
  'allowed-above': 'above the cable, as the rule allows',
  'above-conductor': 'too large for the cable',
  'not-shown': 'no table shows what so thin a cable allows',
} as const

/** `315 A for feed: between load and cable`. */
function protectionInBrief(lookup: Lookup, called: (cable: string) => Markdown): Markdown | undefined {
  const rating = factOf(lookup.block, 'protection.rating')?.value
  const name = factOf(lookup.block, 'protection.in')?.value
  if (rating === undefined || name === undefined) return undefined
  const judged = ratingOf(rating, lookup.referred('in'), lookup, heatAround(lookup.block))
  return (
    judged &&
    md`${prose(formatSi(rating, 'current', 'metric', 3))} for ${called(name)}: ${prose(ratings[judged.verdict])}`
  )
}

const protection: View = {
  on: 'protection',
  hover: (lookup, ground) => {
    const { name } = lookup.block
    const heading = protectionInBrief(lookup, prose) ?? headed('Protection', name)
    const table = figuresMarkdown(heading, figures, lookup, ground)
    return table && paragraphs(table, prose(batteryStaysLive))
  },
  inDrive: (lookup) => {
    const words = protectionInBrief(lookup, code)
    return words === undefined ? [] : [[headed('protection', lookup.block.name, code), words]]
  },
}

/** `set ahead, the shaft turns clockwise, as the right-hand propeller needs`. */
function turningInBrief(lookup: Lookup): Markdown | undefined {
  const turns = turnsOfMap(lookup)
  if (!turns?.ok) return turns && prose(turns.fault.words)
  const { shaft, hand, drivesAhead } = turns.value
  const words = prose(`Set ahead, the shaft turns ${shaft} looking forward`)
  if (!hand) return md`${words}`
  const verdict = prose(`the ${hand} propeller drives ${drivesAhead ? 'ahead' : 'astern'}`)
  return drivesAhead ? md`${words}: ${verdict}` : md`${words}: **${verdict}**`
}

const phases: View = {
  on: 'phase-map',
  hover: (lookup, ground) => {
    const brief = turningInBrief(lookup)
    return brief && (figuresMarkdown(brief, figures, lookup, ground) ?? brief)
  },
  inDrive: (lookup) => {
    const brief = turningInBrief(lookup)
    return brief ? [[md`phase-map`, brief]] : []
  },
}

export const views: readonly View[] = [cable, protection, phases]
