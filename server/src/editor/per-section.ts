import type { Analysis } from '../job/analysis.ts'
import type { JobFile } from '../job/files.ts'
import { Memo } from '../job/memo.ts'
import type { Block, Section } from '../job/model.ts'
import type { Scope } from '../job/scope.ts'
import { once } from '../syntax/once.ts'

export interface View {
  readonly analysis: Analysis
  readonly file: JobFile
}

/** What a feature works out of the blocks of a section, kept until the section or an answer it got from the rest of the job is another. */
export function perSection<T>(
  make: (blocks: readonly Block[], scope: Scope) => readonly T[],
): (view: View, section: Section) => readonly T[] {
  const memoOf = once((_: Analysis) => new Memo<readonly T[]>())
  return ({ analysis, file }, section) => {
    const input = analysis.bound(file, section)
    const scope = analysis.scope(file)
    return (
      memoOf(analysis).get(section, { revision: analysis.revision, scope, input }, (asking) =>
        make(input.blocks, asking),
      ) ?? []
    )
  }
}

/** Every block, outer before inner. */
export const allBlocks = (blocks: readonly Block[]): readonly Block[] =>
  blocks.flatMap((block) => [block, ...allBlocks(block.children)])
