// Brings the timers of Node to the library.
import 'vscode-languageserver/node'
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { filesAround } from '../../server/src/editor/navigation/around.ts'
import { Workspace } from '../../server/src/editor/workspace/workspace.ts'

const examples = resolve(import.meta.dirname, '../../docs/examples')

/** Every demo open in one workspace. */
export async function openDemos() {
  const workspace = new Workspace(() => undefined)
  workspace.setFolders({ added: ['file:///jobs'] })
  const paths = readdirSync(examples, { recursive: true, encoding: 'utf8' }).filter((path) =>
    path.endsWith('.wright'),
  )
  for (const path of paths)
    workspace.open(
      `file:///jobs/${path.replaceAll('\\', '/')}`,
      1,
      readFileSync(join(examples, path), 'utf8'),
    )
  const { analysis } = workspace
  const views = workspace.openFiles.map((open) => ({ analysis, file: workspace.link(open), uri: open.uri }))
  return { workspace, views, around: await filesAround(workspace) }
}
