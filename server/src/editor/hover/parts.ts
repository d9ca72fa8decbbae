import { directionOf } from '../../areas/alignment/plans/directions.ts'
import { formatTurns } from '../../areas/alignment/plans/foot-words.ts'
import { effectOf } from '../../areas/alignment/plans/move-effect.ts'
import { isPlanned } from '../../areas/alignment/plans/moves.ts'
import { batteryStaysLive } from '../../areas/common/dangers.ts'
import { code, list, type Markdown, md, paragraphs, prose, table } from '../../areas/common/markdown.ts'
import { formatCarried, formatLoad } from '../../areas/electrical/plans/amperes.ts'
import { ratingOf } from '../../areas/electrical/plans/cable-protection.ts'
import { capacityWords } from '../../areas/electrical/plans/cable-words.ts'
import { type Squeeze, squeezeOf } from '../../areas/seal/plans/squeeze.ts'
import { type Block, factOf } from '../../job/model.ts'
import { formatSi } from '../../quantity/format.ts'
import { formatLength, formatSlope } from '../../quantity/format-measures.ts'
import type { Lookup } from '../../store/lookup.ts'

/** `27 mm, specified 24 mm to 29 mm: within`. */
const formatFit = ({ found, wanted, within }: Squeeze): string =>
  wanted === undefined ? found : `${found}, specified ${wanted}: ${within ? 'within' : 'outside'}`

export const squeezeInBrief = (squeeze: Squeeze): Markdown =>
  squeeze.wanted === undefined || squeeze.within
    ? prose(formatFit(squeeze))
    : md`${prose(`${squeeze.found}, specified ${squeeze.wanted}:`)} **outside**`

export function sealMarkdown(seal: Block, lookup: Lookup): Markdown | undefined {
  const squeeze = squeezeOf(seal, lookup)
  return squeeze && paragraphs(md`**${prose(`Bellows ${formatFit(squeeze)}`)}**`, prose(squeeze.sum))
}

const ratings = {
  'below-load': 'too small for the load',
  within: 'between load and cable',
  'allowed-above': 'above the cable, as the rule allows',
  'above-conductor': 'too large for the cable',
  'not-shown': 'no table shows what so thin a cable allows',
} as const

const amperes = (value: number): string => formatSi(value, 'current', 'metric', 3)

function judgedOf(device: Block, lookup: Lookup) {
  const rating = factOf(device, 'protection.rating')?.value
  const name = factOf(device, 'protection.protects')?.value
  const judged =
    rating === undefined || name === undefined
      ? undefined
      : ratingOf(rating, lookup.referred('protects'), lookup)
  return judged && rating !== undefined && name !== undefined ? { ...judged, rating, name } : undefined
}

/** `315 A for feed: between load and cable`. */
export function protectionInBrief(device: Block, lookup: Lookup): Markdown | undefined {
  const judged = judgedOf(device, lookup)
  return (
    judged && md`${prose(amperes(judged.rating))} for ${code(judged.name)}: ${prose(ratings[judged.verdict])}`
  )
}

export function protectionMarkdown(device: Block, lookup: Lookup): Markdown | undefined {
  const judged = judgedOf(device, lookup)
  if (!judged) return undefined
  const { rating, name, verdict, window, load, carrying } = judged
  return paragraphs(
    md`**${prose(`${amperes(rating)} for ${name}: ${ratings[verdict]}`)}**`,
    list(
      [
        `at least ${formatLoad(window.low)}: 1.25 × ${formatLoad(load.current, 1)} (${load.currentFrom})`,
        carrying.ampacity.tables === 'in'
          ? `at most ${formatCarried(window.high)}: what ${name} can carry`
          : `what ${name} can carry: ${capacityWords(carrying)}, as far as the tables show it`,
        window.above === 'any-rating'
          ? `below 50 V up to ${formatCarried(window.ceiling)} is allowed`
          : 'the next standard rating above that is allowed, up to 1.5 times as much',
      ].map(prose),
    ),
    prose(`Source: ${window.source}. ${batteryStaysLive}`),
  )
}

/** What a move did at each foot, and to the slope of the machine. */
export function moveMarkdown(move: Block, lookup: Lookup): Markdown | undefined {
  const { feet, slope } = effectOf(move, lookup)
  if (feet.length === 0) return undefined
  const { system } = lookup
  const way = (si: number, more: string, less: string): string =>
    Math.abs(si) < 1e-9 ? 'none' : `${si < 0 ? less : more} ${formatLength(Math.abs(si), system)}`
  const rows = feet.map(({ name, height, starboard, nut }) => {
    const up = height === undefined ? 'not known (unknown thread)' : way(height, 'up', 'down')
    const turns = !nut || nut.direction === 'none' ? '' : formatTurns(nut)
    return [code(name), ...[up, turns, way(starboard, 'to starboard', 'to port')].map(prose)]
  })
  const tilt = (which: 'vertical' | 'horizontal', rad: number): string =>
    `${formatSlope(Math.abs(rad))} ${directionOf('slope', which, rad)}`
  const plane = (which: 'vertical' | 'horizontal'): string => {
    const { before, change = { vertical: 0, horizontal: 0 } } = slope ?? {}
    return before
      ? `${tilt(which, before[which])} → ${tilt(which, before[which] + change[which])}`
      : `by ${tilt(which, change[which])}`
  }
  return paragraphs(
    md`**${prose(`${isPlanned(move) ? 'Planned move' : 'Move'}${move.about ? ` after ${move.about.text}` : ''}`)}**`,
    table(['foot', 'height', 'turns', 'sideways'], rows),
    slope &&
      list([
        prose(`Slope, going forward: ${plane('vertical')}`),
        prose(`Sideways, going forward: ${plane('horizontal')}`),
        slope.gapVariation === undefined
          ? undefined
          : prose(`Expected gap variation: ${formatLength(slope.gapVariation, system)}`),
      ]),
  )
}
