import { viewsOf } from '../../areas/index.ts'
import type { Block, Section } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import { sectionPlan } from '../../store/section-plan.ts'
import { lookupFrom } from '../../store/store.ts'
import type { Span } from '../../syntax/tree.ts'
import { withInner } from './with-inner.ts'

/** A line over a block. */
export interface Lens {
  readonly span: Span
  readonly words: string
}

/** What stands over the blocks of a section, as their areas have it. */
export const codeLenses: (view: View, section: Section) => readonly Lens[] = sectionPlan(({ blocks }, view) =>
  withInner(blocks).flatMap((block) =>
    viewsOf(block.kind).flatMap(({ lenses }) => (lenses ? over(block, lenses(lookupFrom(block, view))) : [])),
  ),
)

const over = ({ node }: Block, lenses: readonly string[]): readonly Lens[] =>
  lenses.map((words) => ({ span: node.headSpan, words }))
