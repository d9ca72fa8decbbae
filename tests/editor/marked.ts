import type { Range } from '../../server/src/editor/workspace/workspace.ts'
import { locate } from '../../server/src/job/document.ts'
import { openFixture } from './fixture.ts'

const root = 'file:///jobs/'

/** A range as `boat.wright 2:10 house`: file, line and character from zero, what is written there. */
export const said = (uri: string, { start }: Range, text: string): string =>
  `${uri.replace(root, '')} ${start.line}:${start.character} ${text}`

/** A marked text (`$0` the cursor, `«house»` what is expected) opened, with what is expected as `said`. */
export function openMarked(marked: string) {
  const { workspace, open, position } = openFixture(marked.replaceAll(/[«»]/g, ''))
  const at = locate(open.document, position)
  if (!at) throw new Error('the cursor is nowhere')
  const view = { analysis: workspace.analysis, file: workspace.link(open) }
  return { workspace, open, position, at, view, expected: marksOf(marked) }
}

function marksOf(marked: string): string[] {
  const pieces = marked.replace('$0', '').split(/^#- (.+)\n/m)
  const marks: string[] = []
  for (let i = 0; i < pieces.length; i += 2) {
    const path = i === 0 ? 'boat.wright' : pieces[i - 1]
    const text = pieces[i] ?? ''
    for (const match of text.matchAll(/«([^»]*)»/g)) {
      const lines = text.slice(0, match.index).replaceAll(/[«»]/g, '').split('\n')
      marks.push(`${path} ${lines.length - 1}:${lines.at(-1)?.length} ${match[1]}`)
    }
  }
  return marks
}
