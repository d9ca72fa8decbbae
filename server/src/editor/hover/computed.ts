import { figuresMarkdown } from '../../areas/common/figure-words.ts'
import { headed, type Markdown, paragraphs } from '../../areas/common/markdown.ts'
import type { Ground } from '../../areas/common/view.ts'
import { allFigures, viewsOf } from '../../areas/index.ts'
import { capital } from '../../common/capital.ts'
import type { Block } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import { lookupFrom } from '../../store/store.ts'
import { driveMarkdown } from './drive.ts'

/** What is worked out from a block: as its areas show it, else the table of its figures. Undefined where there is nothing. */
export function computedMarkdown(
  block: Block,
  view: View,
  findings: Ground['findings'] = () => [],
): Markdown | undefined {
  const lookup = lookupFrom(block, view)
  if (block.kind === 'drive') return driveMarkdown(lookup)
  const ground = { file: view.file, findings }
  const shown = viewsOf(block.kind).flatMap(({ hover }) => hover ?? [])
  if (shown.length > 0) return orNothing(paragraphs(...shown.map((hover) => hover(lookup, ground))))
  return figuresMarkdown(headed(capital(block.kind), block.name), allFigures, lookup, ground)
}

const orNothing = (markdown: Markdown): Markdown | undefined => (markdown === '' ? undefined : markdown)
