// Both sides of a comparison. The older one is given as the git extension of VS Code gives it: read-only files, with the path once more in the query.
import assert from 'node:assert/strict'
import { describe, it } from 'mocha'
import {
  type CodeLens,
  commands,
  EventEmitter,
  type FileChangeEvent,
  FileSystemError,
  type FileSystemProvider,
  FileType,
  languages,
  type Uri,
  workspace,
} from 'vscode'
import { diagnosticsOnce, openJob } from './support/job.ts'

/** One of those that hold revisions and that nobody else serves here. */
const scheme = 'review'

const refOf = ({ query }: Uri): { readonly path: string; readonly ref: string } => JSON.parse(query)

/** The files of the folder as they are on disk, but with another limit in the library. */
const revisions = (folder: Uri, asked: string[]): FileSystemProvider => {
  const read = async (uri: Uri): Promise<Uint8Array> => {
    const { path, ref } = refOf(uri)
    if (path !== uri.path) throw FileSystemError.FileNotFound(uri)
    asked.push(`${ref} ${path.slice(folder.path.length + 1)}`)
    const bytes = await workspace.fs.readFile(folder.with({ path }))
    const text = new TextDecoder().decode(bytes).replace('max 0.12 mm', 'max 0.01 mm')
    return new TextEncoder().encode(text)
  }
  const refuse = (uri: Uri): never => {
    throw FileSystemError.NoPermissions(uri)
  }
  return {
    onDidChangeFile: new EventEmitter<FileChangeEvent[]>().event,
    watch: () => ({ dispose: () => {} }),
    stat: async (uri) => ({ type: FileType.File, ctime: 0, mtime: 0, size: (await read(uri)).length }),
    readFile: read,
    readDirectory: () => [],
    createDirectory: refuse,
    writeFile: refuse,
    delete: refuse,
    rename: refuse,
  }
}

const lensesOf = async (uri: Uri): Promise<string> =>
  (await commands.executeCommand<CodeLens[]>('vscode.executeCodeLensProvider', uri))
    .map(({ command }) => command?.title)
    .join('\n')

const lensesOnce = async (uri: Uri, holds: (titles: string) => boolean): Promise<string> => {
  for (;;) {
    const titles = await lensesOf(uri)
    if (holds(titles)) return titles
    await new Promise((done) => setTimeout(done, 100))
  }
}

describe('a comparison with an older revision', () => {
  it('has results on both sides, with the libraries of each, and problems only for the newer', async () => {
    const { document } = await openJob('twin-screw-ferry.wright')
    const folder = workspace.workspaceFolders?.[0]?.uri
    assert.ok(folder)
    const asked: string[] = []
    const registered = workspace.registerFileSystemProvider(scheme, revisions(folder, asked), {
      isReadonly: true,
      isCaseSensitive: true,
    })
    const older = document.uri.with({
      scheme,
      authority: '',
      query: JSON.stringify({ path: document.uri.path, ref: 'HEAD' }),
    })
    await commands.executeCommand('vscode.diff', older, document.uri, 'Ferry (HEAD) ↔ Ferry')
    await lensesOnce(document.uri, (titles) => titles.includes('Within: 0.04, limit 0.12 mm'))
    const then = await lensesOnce(older, (titles) => titles.includes('dry-1: outside its limits'))
    assert.ok(!then.includes('limit 0.12 mm'))
    assert.ok(asked.includes('HEAD parts/drivetrain.wright'), asked.join())
    // Cautions are among the findings of any job with a battery.
    await diagnosticsOnce(document.uri, (all) => all.length > 0)
    assert.deepEqual(languages.getDiagnostics(older), [])
    await commands.executeCommand('workbench.action.closeActiveEditor')
    await commands.executeCommand('workbench.action.closeAllEditors')
    registered.dispose()
  })
})
