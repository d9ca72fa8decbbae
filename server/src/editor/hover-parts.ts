import type { Lookup } from '../job/lookup.ts'
import { type Block, factOf } from '../job/model.ts'
import { saidCarried, saidLoad } from '../plans/amperes.ts'
import { ratingOf } from '../plans/cable-protection.ts'
import { sayTurns } from '../plans/foot-words.ts'
import { markdownTable } from '../plans/markdown-table.ts'
import { effectOf } from '../plans/move-effect.ts'
import { type Squeeze, squeezeOf } from '../plans/seal-squeeze.ts'
import { wayOf } from '../plans/ways.ts'
import { formatSi } from '../quantity/format.ts'
import { saidLength, saidSlope } from '../quantity/said.ts'
import { code } from './markdown.ts'

/** `, 24 mm to 29 mm wanted: within`. */
export const sayFit = ({ wanted, within }: Squeeze, outside = 'outside'): string =>
  wanted === undefined ? '' : `, ${wanted} wanted: ${within ? 'within' : outside}`

export function sealMarkdown(seal: Block, lookup: Lookup): string | undefined {
  const squeeze = squeezeOf(seal, lookup)
  return squeeze && `**Bellows ${squeeze.found}${sayFit(squeeze)}**\n\n${squeeze.sum}`
}

const ratings = {
  'below-load': 'too small for the load',
  within: 'between load and cable',
  'allowed-above': 'above the cable, as the rule allows',
  'above-conductor': 'too large for the cable',
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
export function protectionInBrief(device: Block, lookup: Lookup): string | undefined {
  const judged = judgedOf(device, lookup)
  return judged && `${amperes(judged.rating)} for ${code(judged.name)}: ${ratings[judged.verdict]}`
}

export function protectionMarkdown(device: Block, lookup: Lookup): string | undefined {
  const judged = judgedOf(device, lookup)
  if (!judged) return undefined
  const { rating, name, verdict, window, load } = judged
  return [
    `**${amperes(rating)} for ${name}: ${ratings[verdict]}**`,
    '',
    `- at least ${saidLoad(window.low)}: 1.25 × ${saidLoad(load.current, 1)} (${load.currentFrom})`,
    `- at most ${saidCarried(window.high)}: what ${name} carries`,
    ...(window.above === 'any-rating'
      ? [`- below 50 V up to ${saidCarried(window.ceiling)} is allowed`]
      : ['- the next standard rating above that, up to half as much again, is allowed']),
    '',
    `Source: ${window.source}. The battery stays live: work for a licensed person.`,
  ].join('\n')
}

/** What a move did at each foot, and to the slope of the machine. */
export function moveMarkdown(move: Block, lookup: Lookup): string | undefined {
  const { feet, slope } = effectOf(move, lookup)
  if (feet.length === 0) return undefined
  const { system } = lookup
  const way = (si: number, more: string, less: string): string =>
    Math.abs(si) < 1e-9 ? 'none' : `${si < 0 ? less : more} ${saidLength(Math.abs(si), system)}`
  const rows = feet.map(({ name, height, starboard, nut }) => {
    const up = height === undefined ? 'not known: the thread is not' : way(height, 'up', 'down')
    const turns = !nut || nut.direction === 'none' ? '' : sayTurns(nut)
    return [code(name), up, turns, way(starboard, 'to starboard', 'to port')]
  })
  const tilt = (which: 'vertical' | 'horizontal', rad: number): string =>
    `${saidSlope(Math.abs(rad))} ${wayOf('slope', which, rad)}`
  const plane = (which: 'vertical' | 'horizontal'): string => {
    const { before, change = { vertical: 0, horizontal: 0 } } = slope ?? {}
    return before
      ? `${tilt(which, before[which])} → ${tilt(which, before[which] + change[which])}`
      : `by ${tilt(which, change[which])}`
  }
  return [
    `**Move${move.about ? ` after ${move.about.text}` : ''}**`,
    '',
    markdownTable(['foot', 'height', 'turns', 'sideways'], rows),
    ...(slope
      ? [
          '',
          `- Slope, going forward: ${plane('vertical')}`,
          `- Sideways, going forward: ${plane('horizontal')}`,
          ...(slope.gapVariation === undefined
            ? []
            : [`- Gap variation to be expected: ${saidLength(slope.gapVariation, system)}`]),
        ]
      : []),
  ].join('\n')
}
