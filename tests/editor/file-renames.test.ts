import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import fc from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import type { WorkspaceEdit } from 'vscode-languageserver/node'
import { relativePath } from '../../server/src/editor/completion/paths.ts'
import { filesAround } from '../../server/src/editor/navigation/around.ts'
import { rewrittenUses } from '../../server/src/editor/rename/file-renames.ts'
import { Workspace } from '../../server/src/editor/workspace/workspace.ts'
import { resolvePath } from '../../server/src/job/files.ts'
import { startProcess } from './client.ts'

const root = 'file:///jobs'

/** `boats/a.wright "../parts/b.wright"`: each `use` line as it has to be written. */
async function rewritten(files: Record<string, string>, ...moves: readonly (readonly [string, string])[]) {
  const workspace = new Workspace(
    (uri) => files[uri.slice(root.length + 1)],
    () => Object.keys(files).map((path) => `${root}/${path}`),
  )
  workspace.setFolders({ added: [root] })
  await workspace.list()
  const uris = moves.map(([from, to]) => ({ oldUri: `${root}/${from}`, newUri: `${root}/${to}` }))
  const found = await Array.fromAsync(rewrittenUses(await filesAround(workspace), uris))
  return found.map(
    ({ in: { file }, at: { section, span }, text }) =>
      `${file.path} ${section.text.slice(span.start, span.end)} ${text}`,
  )
}

const files = {
  'a.wright': 'use "parts/shafts.wright"\nuse "parts/none.wright"\n',
  'boats/b.wright': 'use "../parts/shafts.wright"\nuse "c.wright"\n',
  'boats/c.wright': '# nothing\n',
  'parts/shafts.wright': 'use "bolts.wright"\n',
  'parts/bolts.wright': 'bolts b {}\n',
}

describe('use lines after a move', () => {
  it('lead to a file by its new name, from every file', async () =>
    expect(await rewritten(files, ['parts/shafts.wright', 'parts/all shafts.wright'])).toEqual([
      'a.wright "parts/shafts.wright" "parts/all shafts.wright"',
      'boats/b.wright "../parts/shafts.wright" "../parts/all shafts.wright"',
    ]))

  it('lead from a file in its new folder to where they led before', async () =>
    expect(await rewritten(files, ['boats/b.wright', 'b.wright'])).toEqual([
      'boats/b.wright "../parts/shafts.wright" "parts/shafts.wright"',
      'boats/b.wright "c.wright" "boats/c.wright"',
    ]))

  it('lead into a folder by its new name; those between its files stay', async () =>
    expect(await rewritten(files, ['parts', 'stock/parts'])).toEqual([
      'a.wright "parts/shafts.wright" "stock/parts/shafts.wright"',
      'a.wright "parts/none.wright" "stock/parts/none.wright"',
      'boats/b.wright "../parts/shafts.wright" "../stock/parts/shafts.wright"',
    ]))

  it('follow both when a file is moved out of a folder that is moved', async () =>
    expect(await rewritten(files, ['parts', 'stock'], ['parts/bolts.wright', 'bolts.wright'])).toEqual([
      'a.wright "parts/shafts.wright" "stock/shafts.wright"',
      'a.wright "parts/none.wright" "stock/none.wright"',
      'boats/b.wright "../parts/shafts.wright" "../stock/shafts.wright"',
      'parts/shafts.wright "bolts.wright" "../bolts.wright"',
    ]))

  it('stay when what is moved is not used, and when the new name cannot be written', async () => {
    expect(await rewritten(files, ['other.wright', 'x.wright'])).toEqual([])
    expect(await rewritten(files, ['boats/c.wright', 'boats/7".wright'])).toEqual([])
  })

  it('mean the file that they are written for (any two paths)', () => {
    const path = fc
      .array(fc.constantFrom('a', 'b', 'c d'), { minLength: 1, maxLength: 5 })
      .map((p) => p.join('/'))
    fc.assert(
      fc.property(path, path, (from, to) => {
        fc.pre(!to.startsWith(`${from}/`) && !from.startsWith(`${to}/`))
        expect(resolvePath(from, relativePath(`${root}/${from}`, `${root}/${to}`))).toBe(to)
      }),
    )
  })
})

describe('over standard input and output', () => {
  const base = mkdtempSync(join(tmpdir(), 'shaftwright-'))
  afterAll(() => rmSync(base, { recursive: true }))

  it('an editor that moves files is given the edits first', async () => {
    mkdirSync(join(base, 'parts'))
    const at = (...path: readonly string[]) => pathToFileURL(join(base, ...path)).href
    writeFileSync(join(base, 'parts', 'b.wright'), 'bolts b {}\n')
    writeFileSync(join(base, 'a.wright'), 'job "A" {}\nuse "parts/b.wright"\n')
    const { client, stop } = await startProcess({ workspaceFolders: [{ uri: at(), name: 'jobs' }] })
    expect(client.initialized.capabilities.workspace).toMatchObject({
      workspaceFolders: { supported: true },
      fileOperations: { willRename: { filters: [{ pattern: { glob: '**/*.wright' } }, {}] } },
    })
    const move = (from: string, to: string) =>
      client.connection.sendRequest<WorkspaceEdit | null>('workspace/willRenameFiles', {
        files: [{ oldUri: from, newUri: to }],
      })
    expect(await move(at('parts', 'b.wright'), at('b.wright'))).toEqual({
      changes: {
        [at('a.wright')]: [
          {
            range: { start: { line: 1, character: 4 }, end: { line: 1, character: 20 } },
            newText: '"b.wright"',
          },
        ],
      },
    })
    expect(await move(at('a.wright'), at('c.wright'))).toBeNull()
    await stop()
  })

  it('one that takes them by version is given them so, null for a file that is not open', async () => {
    const at = (...path: readonly string[]) => pathToFileURL(join(base, ...path)).href
    const { client, stop } = await startProcess({
      workspaceFolders: [{ uri: at(), name: 'jobs' }],
      capabilities: { workspace: { workspaceEdit: { documentChanges: true } } },
    })
    const moved = { files: [{ oldUri: at('parts', 'b.wright'), newUri: at('b.wright') }] }
    const edits = () => client.connection.sendRequest<WorkspaceEdit>('workspace/willRenameFiles', moved)
    expect(await edits()).toMatchObject({
      documentChanges: [{ textDocument: { uri: at('a.wright'), version: null }, edits: [{}] }],
    })
    client.open(at('a.wright'), 'use "parts/b.wright"\n', 3)
    expect(await edits()).toMatchObject({
      documentChanges: [{ textDocument: { uri: at('a.wright'), version: 3 }, edits: [{}] }],
    })
    await stop()
  })
})
