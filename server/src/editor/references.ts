import type { Analysis } from '../job/analysis.ts'
import type { Section } from '../job/model.ts'
import type { View } from '../job/per-section.ts'
import type { FileAround } from './around.ts'
import { type Mention, mentionsIn, targetAt } from './target.ts'

export interface FoundMention extends Mention {
  readonly in: FileAround
}

/** Every word of the files that stands for the same as the one at an offset. */
export function references(
  view: View,
  { section, offset }: { readonly section: Section; readonly offset: number },
  around: readonly FileAround[],
): readonly FoundMention[] {
  const target = targetAt(view, section, offset)
  return target ? mentionsAround(view.analysis, target, around) : []
}

export const mentionsAround = (
  analysis: Analysis,
  target: Parameters<typeof mentionsIn>[1],
  around: readonly FileAround[],
): readonly FoundMention[] =>
  around.flatMap((of) =>
    mentionsIn({ analysis, file: of.file }, target).map((mention) => ({ ...mention, in: of })),
  )
