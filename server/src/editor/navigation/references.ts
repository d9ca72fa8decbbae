import type { Section } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import type { FileAround, FilesAround } from './around.ts'
import { mayMention } from './may-mention.ts'
import { type Mention, mentionsIn, type Target, targetAt, wordsFor } from './target.ts'

export interface FoundMention extends Mention {
  readonly in: FileAround
}

/** Every word of the files that stands for the same as the one at an offset. */
export async function* references(
  view: View,
  { section, offset }: { readonly section: Section; readonly offset: number },
  around: FilesAround,
): AsyncGenerator<FoundMention> {
  const target = targetAt(view, section, offset)
  if (target) yield* mentionsAround(target, around)
}

/** Reads only the files that use the one where the target is defined, and of these only those that have its name in their text. */
export async function* mentionsAround(
  target: Pick<Target, 'named' | 'block' | 'is'>,
  around: FilesAround,
): AsyncGenerator<FoundMention> {
  const holder = around.keyOf(target.named.section)
  const users = around.usersOf(holder === undefined ? [] : [holder])
  const words = wordsFor(target)
  const candidates = around.files(
    ({ key, text }) => users.has(key) && (key === holder || mayMention(text, words)),
  )
  for await (const of of candidates)
    for (const mention of mentionsIn({ analysis: around.analysis, file: of.file }, target))
      yield { ...mention, in: of }
}
