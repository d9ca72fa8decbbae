import { nutMoves, nutTravel } from '../engineering/adjusters.ts'
import { parseThread, type Thread } from '../engineering/thread.ts'
import { type Lookup, lookupFrom } from '../job/lookup.ts'
import { type Block, factOf, type Section } from '../job/model.ts'
import type { Scope } from '../job/scope.ts'
import { correctionOf } from '../plans/alignment.ts'
import { saidLength, sayTurns } from '../plans/alignment-words.ts'
import { briefLoad, briefVerdict } from '../plans/brief-words.ts'
import { cableLoading } from '../plans/cable-loading.ts'
import { ampacityWords } from '../plans/cable-words.ts'
import { findKind } from '../vocabulary/index.ts'
import type { FootMove } from '../vocabulary/shapes/foot-move.ts'
import { converted } from './converted.ts'
import { allBlocks, perSection, type View } from './per-section.ts'

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

const hintsOf = perSection((blocks: readonly Block[], scope: Scope) =>
  allBlocks(blocks)
    .flatMap((block) => [...unitHints(block, scope), ...blockHints(block, lookupFrom(block, scope))])
    .sort((a, b) => a.at - b.at),
)

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
        `gap variation ${saidLength(gapVariation.limit, lookup.system)}: ${gapVariation.limitFrom}`,
        ...(offset ? [`offset ${saidLength(offset.limit, lookup.system)}: ${offset.limitFrom}`] : []),
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

/** The thread the feet are set by, with its designation. */
export function threadOf(lookup: Lookup): { readonly thread: Thread; readonly name: string } | undefined {
  const bed = lookup.near('bed')
  const name = bed && factOf(bed, 'bed.thread')?.value
  const parsed = name === undefined ? undefined : parseThread(name)
  return parsed?.ok && name !== undefined && factOf(bed as Block, 'bed.adjuster')?.value !== 'shims'
    ? { thread: parsed.value, name }
    : undefined
}

/** A height in the other measure: a turn of the nut as a length, a length as turns of the nut. */
export function otherMeasure({ turn, rise }: FootMove, thread: Thread, lookup: Lookup): string | undefined {
  if (turn !== undefined) {
    const turns = Math.abs(turn) / (2 * Math.PI)
    return turns > 1000 ? undefined : saidLength(nutTravel({ turns, flats: 0 }, thread.pitch), lookup.system)
  }
  if (rise === undefined || Math.abs(rise) > 1) return undefined
  const { halfFlats } = nutMoves(rise, thread)
  const exact = Math.abs(halfFlats.left) < 1e-6
  return halfFlats.direction === 'none'
    ? 'less than half a flat'
    : `${exact ? '' : 'about '}${sayTurns(halfFlats)}`
}

function moveHints(move: Block, lookup: Lookup): readonly Hint[] {
  const set = threadOf(lookup)
  if (!set) return []
  const tooltip = `Thread ${set.name} of the bed, pitch ${saidLength(set.thread.pitch, lookup.system)}: one flat is a sixth of a turn, and a turn goes one pitch (geometry of a single-start thread).`
  return [...move.others.values()].flatMap(({ node, value }): Hint[] => {
    const words = otherMeasure(value as FootMove, set.thread, lookup)
    const entry = node.entries.find(
      ({ parts: [way] }) => way?.type === 'word' && /^(up|down)$/.test(way.text),
    )
    return words === undefined || !entry ? [] : [{ sort: 'moves', at: entry.span.end, words, tooltip }]
  })
}
