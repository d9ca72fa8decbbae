import { formatTurns } from '../../areas/alignment/plans/foot-words.ts'
import { threadNear } from '../../areas/alignment/plans/move-effect.ts'
import { canCarry } from '../../areas/electrical/plans/cable-ampacity.ts'
import { cableLoading } from '../../areas/electrical/plans/cable-loading.ts'
import { ampacityWords, briefLoad } from '../../areas/electrical/plans/cable-words.ts'
import { nutMove } from '../../engineering/adjusters.ts'
import { heightOf, type Thread } from '../../engineering/thread.ts'
import { type Block, isTakenWhole, type Section } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import { formatLength } from '../../quantity/format-measures.ts'
import type { UnitSystem } from '../../quantity/kinds.ts'
import type { Lookup } from '../../store/lookup.ts'
import { sectionPlan } from '../../store/section-plan.ts'
import { lookupFrom } from '../../store/store.ts'
import { findKind } from '../../vocabulary/index.ts'
import type { FootMove } from '../../vocabulary/shapes/foot-move.ts'
import { converted } from './converted.ts'
import { isMixed } from './systems-used.ts'

export type HintSort = 'units' | 'sums' | 'cables' | 'moves'

/** What is to be shown, as the settings of these names have it. */
export interface HintSettings {
  /** Amounts in the other system: `mixed`, where a job is written in both. */
  readonly units: 'off' | 'mixed' | 'always'
  readonly sums: boolean
  readonly cables: boolean
  readonly moves: boolean
}

export const everyHint: HintSettings = { units: 'always', sums: true, cables: true, moves: true }

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
    settings = everyHint,
  }: {
    readonly from?: number
    readonly to?: number
    readonly settings?: HintSettings
  } = {},
): readonly Hint[] {
  const { units, ...others } = settings
  const isShown = { ...others, units: units === 'always' || (units === 'mixed' && isMixed(view.file)) }
  return hintsOf(view, section).filter(({ sort, at }) => isShown[sort] && at >= from && at <= to)
}

const hintsOf = sectionPlan(({ blocks }, view) =>
  allBlocks(blocks)
    // What a drive takes from another has no text here to put them at.
    .filter((block) => !isTakenWhole(block))
    .flatMap((block) => {
      const lookup = lookupFrom(block, view)
      return [...unitHints(block, lookup.system), ...blockHints(lookup)]
    })
    .sort((a, b) => a.at - b.at),
)

/** Every block, outer before inner. */
const allBlocks = (blocks: readonly Block[]): readonly Block[] =>
  blocks.flatMap((block) => [block, ...allBlocks(block.children)])

function unitHints(block: Block, system: UnitSystem): readonly Hint[] {
  const facts = findKind(block.kind)?.facts ?? {}
  return [...block.facts].flatMap(([name, value]): Hint[] => {
    const shape = facts[name]?.shape
    const found = shape && !value.origin ? converted(value, shape, system) : undefined
    return found
      ? [
          {
            sort: found.isSum ? 'sums' : 'units',
            at: value.at.span.end,
            words: found.words,
            tooltip: found.source,
          },
        ]
      : []
  })
}

function blockHints(lookup: Lookup): readonly Hint[] {
  const { block } = lookup
  const at = block.node.headSpan.end
  switch (block.kind) {
    case 'cable': {
      const outcome = cableLoading(block, lookup)
      // A cable that is too thin, or that no table shows to be thick enough, is a finding, which says so.
      if (!outcome.ok || canCarry(outcome.value, outcome.value.current) !== 'yes') return []
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
  if (turn !== undefined) return formatLength(Math.abs(heightOf(turn, thread)), system)
  if (rise === undefined) return undefined
  const halfFlats = nutMove(rise, thread, 2)
  if (halfFlats.direction === 'none') return 'less than half a flat'
  return `${Math.abs(halfFlats.left) < 1e-6 ? '' : 'about '}${formatTurns(halfFlats)}`
}

function moveHints(move: Block, lookup: Lookup): readonly Hint[] {
  const set = threadNear(lookup)
  if (!set) return []
  const tooltip = `Thread ${set.name} of the bed, pitch ${formatLength(set.thread.pitch, lookup.system)}: one flat is a sixth of a turn, and a turn goes one pitch (geometry of a single-start thread).`
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
