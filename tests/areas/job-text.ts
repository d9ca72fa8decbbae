import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import type { Block } from '../../server/src/job/model.ts'
import type { Lookup } from '../../server/src/store/lookup.ts'
import { lookupFrom } from '../../server/src/store/store.ts'

/** A block of a job, found by its path (`main.dry-1`), and what can be asked from where it stands. */
export function blockIn(text: string, path: string): { readonly block: Block; readonly lookup: Lookup } {
  const file = linkFile('a.wright', openDocument(text), () => undefined)
  const analysis = new Analysis()
  analysis.begin()
  const all = (blocks: readonly Block[]): readonly Block[] => blocks.flatMap((b) => [b, ...all(b.children)])
  const block = all(analysis.blocks(file)).find((b) => b.path === path)
  if (!block) throw new Error(`no block ${path}`)
  const lookup = lookupFrom(block, { analysis, file })
  return { block: lookup.block, lookup }
}
