import type { BlockHint } from '../../areas/common/view.ts'
import { viewsOf } from '../../areas/index.ts'
import { type Block, isTakenWhole, type Section } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import type { UnitSystem } from '../../quantity/kinds.ts'
import type { Lookup } from '../../store/lookup.ts'
import { sectionPlan } from '../../store/section-plan.ts'
import { lookupFrom } from '../../store/store.ts'
import { findKind } from '../../vocabulary/index.ts'
import { converted } from './converted.ts'
import { isMixed } from './systems-used.ts'
import { withInner } from './with-inner.ts'

export type HintSort = 'units' | 'sums' | BlockHint['setting']

/** What is to be shown, as the settings of these names have it. */
export interface HintSettings {
  /** Amounts in the other system: `mixed`, where a job is written in both. */
  readonly units: 'off' | 'mixed' | 'always'
  readonly sums: boolean
  readonly cables: boolean
  readonly moves: boolean
  readonly results: boolean
}

export const everyHint: HintSettings = {
  units: 'always',
  sums: true,
  cables: true,
  moves: true,
  results: true,
}

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
  withInner(blocks)
    // What a drive takes from another has no text here to put them at.
    .filter((block) => !isTakenWhole(block))
    .flatMap((block) => {
      const lookup = lookupFrom(block, view)
      return [...unitHints(block, lookup.system), ...blockHints(lookup)]
    })
    .sort((a, b) => a.at - b.at),
)

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

const blockHints = (lookup: Lookup): readonly Hint[] =>
  viewsOf(lookup.block.kind).flatMap(({ hints }) =>
    (hints?.(lookup) ?? []).map(({ setting, ...shown }) => ({ sort: setting, ...shown })),
  )
