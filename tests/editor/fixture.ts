// Brings the timers of Node to the library.
import 'vscode-languageserver/node'
import { expect } from 'vitest'
import { hover } from '../../server/src/editor/hover/hover.ts'
import { Workspace } from '../../server/src/editor/workspace/workspace.ts'
import { uriOf } from '../../server/src/host/uri.ts'
import { locate } from '../../server/src/job/document.ts'

const root = 'file:///jobs'

/** Files of a marked text: `#- parts/shafts.wright` begins one, `$0` is the cursor. The file with the cursor is the open one. */
function readFixture(marked: string) {
  const pieces = marked.split(/^#- (.+)\n/m)
  const files = new Map<string, string>()
  if (pieces[0]?.trim()) files.set('boat.wright', pieces[0])
  for (let i = 1; i < pieces.length; i += 2) files.set(pieces[i] ?? '', pieces[i + 1] ?? '')
  const [path = '', text = ''] = [...files].find(([, body]) => body.includes('$0')) ?? []
  files.set(path, text.replace('$0', ''))
  return { files, path, offset: text.indexOf('$0') }
}

/** The fixture's file opened in a workspace, with the cursor as a position. */
export function openFixture(marked: string) {
  const { files, path, offset } = readFixture(marked)
  const disk = new Map([...files].map(([name, text]) => [uriOf(`${root}/${name}`), text]))
  const workspace = new Workspace((uri) => disk.get(uri))
  workspace.setFolders({ added: [root] })
  const uri = uriOf(`${root}/${path}`)
  workspace.open(uri, 1, files.get(path) ?? '')
  const open = workspace.get(uri)
  if (!open) throw new Error(`${path} is not open`)
  const before = (files.get(path) ?? '').slice(0, offset).split('\n')
  const position = { line: before.length - 1, character: before.at(-1)?.length ?? 0 }
  return { workspace, open, position }
}

export function hoverAt(marked: string) {
  const { workspace, open, position } = openFixture(marked)
  const at = locate(open.document, position)
  return at && hover({ analysis: workspace.analysis, file: workspace.link(open) }, at.section, at.offset)
}

/** The hover at the cursor says every one of these. */
export function checkHover(marked: string, ...says: readonly (string | RegExp)[]): void {
  const markdown = hoverAt(marked)?.markdown ?? ''
  for (const words of says)
    if (typeof words === 'string') expect(markdown).toContain(words)
    else expect(markdown).toMatch(words)
}
