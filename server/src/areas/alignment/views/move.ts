import { nutMove } from '../../../engineering/adjusters.ts'
import { heightOf, type Thread } from '../../../engineering/thread.ts'
import { formatLength, formatSlope } from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import type { Lookup } from '../../../store/lookup.ts'
import type { FootMove } from '../../../vocabulary/shapes/foot-move.ts'
import { formatAmount, formatAmountLimit, formulasMarkdown } from '../../common/figure-words.ts'
import { code, list, type Markdown, md, paragraphs, prose, table } from '../../common/markdown.ts'
import { resultOf } from '../../common/result.ts'
import type { BlockHint, View } from '../../common/view.ts'
import { moveFigures, stiffFigures } from '../figures/move.ts'
import { directionOf } from '../plans/directions.ts'
import { formatTurns } from '../plans/foot-words.ts'
import { effectOf, threadNear } from '../plans/move-effect.ts'
import { isPlanned } from '../plans/moves.ts'

/** What a move did at each foot, and to the slope of the machine. */
function moveMarkdown(lookup: Lookup): Markdown | undefined {
  const { block: move, system } = lookup
  const { feet, slope } = effectOf(move, lookup)
  if (feet.length === 0) return undefined
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
    list(beyondStiff(lookup)),
    formulasMarkdown(moveFigures),
  )
}

/** What a stiff machine cannot have done. */
const beyondStiff = (lookup: Lookup): readonly Markdown[] =>
  stiffFigures.flatMap((figure) => {
    const { amount, verdict } = resultOf(figure, lookup) ?? {}
    const { limit } = amount ?? {}
    if (!amount || !limit || verdict === 'within') return []
    const { system } = lookup
    return [
      prose(
        `${figure.title}: ${formatAmount(figure, amount, system)}; allowed: ${formatAmountLimit(figure, { ...amount, limit }, system)}`,
      ),
    ]
  })

/** A height in the other measure: a turn of the nut as a length, a length as turns of the nut. */
function otherMeasure({ turn, rise }: FootMove, thread: Thread, system: UnitSystem): string | undefined {
  if (turn !== undefined) return formatLength(Math.abs(heightOf(turn, thread)), system)
  if (rise === undefined) return undefined
  const halfFlats = nutMove(rise, thread, 2)
  if (halfFlats.direction === 'none') return 'less than half a flat'
  return `${Math.abs(halfFlats.left) < 1e-6 ? '' : 'about '}${formatTurns(halfFlats)}`
}

function moveHints(lookup: Lookup): readonly BlockHint[] {
  const set = threadNear(lookup)
  if (!set) return []
  const tooltip = `Thread ${set.name} of the bed, pitch ${formatLength(set.thread.pitch, lookup.system)}: one flat is a sixth of a turn, and a turn goes one pitch (geometry of a single-start thread).`
  return [...lookup.block.others.values()].flatMap(({ node, value }): BlockHint[] => {
    const words = otherMeasure(value as FootMove, set.thread, lookup.system)
    const entry = node.entries.find(
      ({ parts: [way] }) => way?.type === 'word' && /^(up|down)$/.test(way.text),
    )
    return words === undefined || !entry
      ? []
      : [{ setting: 'moves', at: entry.span.end, words: `(${words})`, tooltip }]
  })
}

export const move: View = { on: 'move', hover: moveMarkdown, hints: moveHints }
