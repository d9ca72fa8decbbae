import { nutMove } from '../engineering/adjusters.ts'
import type { Thread } from '../engineering/thread.ts'
import { type Lookup, lookupFrom } from '../job/lookup.ts'
import type { Block, Section } from '../job/model.ts'
import { perSection, type View } from '../job/per-section.ts'
import type { Scope } from '../job/scope.ts'
import { correctionOf } from '../plans/alignment.ts'
import { briefLoad, briefVerdict } from '../plans/brief-words.ts'
import { cableLoading } from '../plans/cable-loading.ts'
import { ampacityWords } from '../plans/cable-words.ts'
import { sayTurns } from '../plans/foot-words.ts'
import { heightOf, threadNear } from '../plans/move-effect.ts'
import type { UnitSystem } from '../quantity/kinds.ts'
import { saidLength, saidLimit } from '../quantity/said.ts'
import { findKind } from '../vocabulary/index.ts'
import type { FootMove } from '../vocabulary/shapes/foot-move.ts'
import { converted } from './converted.ts'

/** Each sort can be switched off by a setting of its name. */
export type HintSort = 'units' | 'cables' | 'moves' | 'verdicts'

export type HintSorts = Readonly<Record<HintSort, boolean>>

export const everySort: HintSorts = { units: true, cables: true, moves: true, verdicts: true }

/** A few words shown behind a place in the text. */
export interface Hint {
  readonly sort: HintSort
  /** Offset in the section. */
  readonly at: number
  readonly words: string
  /** Where it comes from. */
  readonly tooltip: string
}

/** The hints of a part of a section. */
export function inlayHints(
  view: View,
  section: Section,
  {
    from = 0,
    to = section.text.length,
    sorts = everySort,
  }: {
    readonly from?: number
    readonly to?: number
    readonly sorts?: HintSorts
  } = {},
): readonly Hint[] {
  return hintsOf(view, section).filter(({ sort, at }) => sorts[sort] && at >= from && at <= to)
}

const hintsOf = perSection(({ blocks }, scope) =>
  allBlocks(blocks)
    .flatMap((block) => [...unitHints(block, scope), ...blockHints(block, lookupFrom(block, scope))])
    .sort((a, b) => a.at - b.at),
)

/** Every block, outer before inner. */
const allBlocks = (blocks: readonly Block[]): readonly Block[] =>
  blocks.flatMap((block) => [block, ...allBlocks(block.children)])

function unitHints(block: Block, scope: Scope): readonly Hint[] {
  const facts = findKind(block.kind)?.facts ?? {}
  return [...block.facts].flatMap(([name, value]): Hint[] => {
    const shape = facts[name]?.shape
    const found = shape && !value.origin ? converted(value, shape, scope.system()) : undefined
    return found ? [{ sort: 'units', at: value.at.span.end, words: found.words, tooltip: found.source }] : []
  })
}

function blockHints(block: Block, lookup: Lookup): readonly Hint[] {
  const at = block.node.headSpan.end
  switch (block.kind) {
    case 'reading': {
      const outcome = correctionOf(block, lookup)
      if (!outcome.ok) return []
      const { gapVariation, offset } = outcome.value
      const limits = [
        `gap variation ${saidLimit(gapVariation.limit, lookup.system)}: ${gapVariation.limitFrom}`,
        ...(offset ? [`offset ${saidLimit(offset.limit, lookup.system)}: ${offset.limitFrom}`] : []),
      ]
      const tooltip = `What was read of what is allowed. Allowed: ${limits.join('; ')}. Decision rule: ISO 14253-1.`
      return [{ sort: 'verdicts', at, words: briefVerdict(outcome.value, lookup.system), tooltip }]
    }
    case 'cable': {
      const outcome = cableLoading(block, lookup)
      if (!outcome.ok) return []
      const { currentFrom, sources } = outcome.value
      const tooltip = `Current: ${currentFrom}. Can carry: ${ampacityWords(outcome.value)} Source: ${sources.join('; ')}.`
      return [{ sort: 'cables', at, words: briefLoad(outcome.value), tooltip }]
    }
    case 'move':
      return moveHints(block, lookup)
    default:
      return []
  }
}

/** A height in the other measure: a turn of the nut as a length, a length as turns of the nut. */
function otherMeasure({ turn, rise }: FootMove, thread: Thread, system: UnitSystem): string | undefined {
  if (turn !== undefined) return saidLength(Math.abs(heightOf(turn, thread)), system)
  if (rise === undefined) return undefined
  const halfFlats = nutMove(rise, thread, 2)
  if (halfFlats.direction === 'none') return 'less than half a flat'
  return `${Math.abs(halfFlats.left) < 1e-6 ? '' : 'about '}${sayTurns(halfFlats)}`
}

function moveHints(move: Block, lookup: Lookup): readonly Hint[] {
  const set = threadNear(lookup)
  if (!set) return []
  const tooltip = `Thread ${set.name} of the bed, pitch ${saidLength(set.thread.pitch, lookup.system)}: one flat is a sixth of a turn, and a turn goes one pitch (geometry of a single-start thread).`
  return [...move.others.values()].flatMap(({ node, value }): Hint[] => {
    const words = otherMeasure(value as FootMove, set.thread, lookup.system)
    const entry = node.entries.find(
      ({ parts: [way] }) => way?.type === 'word' && /^(up|down)$/.test(way.text),
    )
    return words === undefined || !entry
      ? []
      : [{ sort: 'moves', at: entry.span.end, words: `(${words})`, tooltip }]
  })
}
