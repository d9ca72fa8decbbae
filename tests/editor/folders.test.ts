// Folders created, deleted and renamed while the server runs. An editor reports only the folder, not each file in it (LSP 3.17, File Change Events).
import { mkdirSync, mkdtempSync, realpathSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { afterEach, describe, expect, it } from 'vitest'
import {
  type CompletionItem,
  type CompletionList,
  type FileSystemWatcher,
  type Location,
  LSPErrorCodes,
  ProgressType,
  type WorkspaceDiagnosticReport,
  type WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver/node'
import { listFiles, readFile } from '../../server/src/editor/client-requests.ts'
import { clientFiles } from '../../server/src/editor/transport/client-files.ts'
import type { Host } from '../../server/src/host/host.ts'
import { listInside, readInside } from '../../server/src/host/machine-node.ts'
import { codes, startHere } from './client.ts'

const created = 1
const changed = 2
const deleted = 3

const job = 'use "parts/shafts.wright"\ndrive d { shaft { like: stock } }\n'
const stock = 'shaft stock { diameter: 35 mm }\n'

const disk: Host = {
  read: (uri, root) => readInside(fileURLToPath(root), fileURLToPath(uri)),
  list: async (root) => (await listInside(fileURLToPath(root))).map((path) => pathToFileURL(path).href),
  today: () => '2026-03-04',
}

const after: (() => unknown)[] = []
afterEach(async () => {
  for (const work of after.splice(0).reverse()) await work()
})

/** A folder with a job that uses a file of a folder in it, and an editor that has the job open. */
async function yard({ watches = true, pulls = false, folders = ['yard'] } = {}) {
  const base = realpathSync(mkdtempSync(join(tmpdir(), 'shaftwright-folders-')))
  after.push(() => rmSync(base, { recursive: true, force: true }))
  const path = (...names: readonly string[]) => join(base, 'yard', ...names)
  const at = (...names: readonly string[]) => pathToFileURL(path(...names)).href
  mkdirSync(path('parts'), { recursive: true })
  writeFileSync(path('job.wright'), job)
  writeFileSync(path('parts', 'shafts.wright'), stock)
  const watchers: FileSystemWatcher[] = []
  const client = await startHere(
    disk,
    {
      workspaceFolders: folders.map((name) => ({ uri: pathToFileURL(join(base, name)).href, name })),
      capabilities: {
        ...(pulls && { textDocument: { diagnostic: {} } }),
        workspace: { didChangeWatchedFiles: { dynamicRegistration: watches } },
      },
    },
    (connection) =>
      connection.onRequest('client/registerCapability', ({ registrations }) => {
        for (const { registerOptions } of registrations) watchers.push(...(registerOptions?.watchers ?? []))
        return null
      }),
  )
  const told = (method: string, params: object) => client.connection.sendNotification(method, params)
  const isWatched = (uri: string, type: number) =>
    watchers.some(({ globPattern, kind = 7 }) => {
      const fits = globPattern === '**/*' || (globPattern === '**/*.wright' && uri.endsWith('.wright'))
      return fits && (kind & (1 << (type - 1))) !== 0
    })
  /** Tells what an editor tells that watches what it was asked to. */
  const happened = (...events: readonly (readonly [string, number])[]) => {
    const changes = events.flatMap(([uri, type]) => (isWatched(uri, type) ? [{ uri, type }] : []))
    return changes.length > 0 ? told('workspace/didChangeWatchedFiles', { changes }) : undefined
  }
  client.open(at('job.wright'), job)
  const findings = async () => {
    const { items } = await client.connection.sendRequest<{ items: [] }>('textDocument/diagnostic', {
      textDocument: { uri: at('job.wright') },
    })
    return codes(items)
  }
  const isSaid = (code: string, is: boolean) =>
    client.published(at('job.wright'), ({ diagnostics }) => codes(diagnostics).includes(code) === is)
  const paths = async (): Promise<readonly string[]> => {
    const uri = at('other.wright')
    client.open(uri, 'use ""')
    const list = await client.connection.sendRequest<CompletionList | CompletionItem[] | null>(
      'textDocument/completion',
      { textDocument: { uri }, position: { line: 0, character: 5 } },
    )
    return (list && 'items' in list ? list.items : (list ?? [])).map(({ label }) => label).toSorted()
  }
  return { base, path, at, client, told, happened, findings, isSaid, paths }
}

describe('a folder that is deleted and comes back', () => {
  it('is noticed by an open job that uses a file in it', async () => {
    const { path, at, happened, isSaid } = await yard()
    await isSaid('job/file-not-found', false)
    rmSync(path('parts'), { recursive: true })
    await happened([at('parts'), deleted])
    await isSaid('job/file-not-found', true)
    mkdirSync(path('parts'))
    writeFileSync(path('parts', 'shafts.wright'), stock)
    await happened([at('parts'), created])
    await isSaid('job/file-not-found', false)
  })

  it('is noticed however deep the file is', async () => {
    const { base, at, client, happened } = await yard()
    const uri = at('deep.wright')
    mkdirSync(join(base, 'yard/a/b/c'), { recursive: true })
    writeFileSync(join(base, 'yard/a/b/c/d.wright'), stock)
    client.open(uri, 'use "a/b/c/d.wright"\n')
    await client.published(uri, ({ diagnostics }) => !codes(diagnostics).includes('job/file-not-found'))
    rmSync(join(base, 'yard/a'), { recursive: true })
    await happened([`${at('a')}/`, deleted])
    await client.published(uri, ({ diagnostics }) => codes(diagnostics).includes('job/file-not-found'))
  })

  it('is noticed where it is the whole workspace folder', async () => {
    const { path, base, at, happened, isSaid } = await yard()
    await isSaid('job/file-not-found', false)
    renameSync(path(), join(base, 'gone'))
    await happened([at().replace(/\/$/, ''), deleted])
    await isSaid('job/file-not-found', true)
    renameSync(join(base, 'gone'), path())
    await happened([at().replace(/\/$/, ''), created])
    await isSaid('job/file-not-found', false)
  })

  it('is noticed where a file takes its place', async () => {
    const { path, at, happened, isSaid } = await yard()
    await isSaid('job/file-not-found', false)
    rmSync(path('parts'), { recursive: true })
    writeFileSync(path('parts'), 'no folder')
    await happened([at('parts'), changed], [at('parts'), deleted], [at('parts'), created])
    await isSaid('job/file-not-found', true)
  })

  it('is noticed by an editor that asks, and what is in it is reported empty', async () => {
    const { path, base, at, client, happened, findings } = await yard({ pulls: true })
    const askAll = async (items: readonly WorkspaceDocumentDiagnosticReport[]) => {
      const previousResultIds = items.map(({ uri, resultId }) => ({ uri, value: resultId }))
      const each: WorkspaceDocumentDiagnosticReport[] = []
      const partialResultToken = `each-${Math.random()}`
      const reports = new ProgressType<WorkspaceDiagnosticReport>()
      client.connection.onProgress(reports, partialResultToken, ({ items: some }) => void each.push(...some))
      await client.connection.sendRequest('workspace/diagnostic', { previousResultIds, partialResultToken })
      return each
    }
    const first = await askAll([])
    expect(first.map(({ uri }) => uri)).toEqual([at('job.wright'), at('parts', 'shafts.wright')])
    expect(await findings()).not.toContain('job/file-not-found')
    const next = askAll(first)
    renameSync(path('parts'), join(base, 'parts'))
    await happened([at('parts'), deleted])
    const news = (await next).filter(({ kind }) => kind === 'full')
    expect(news.map((report) => [report.uri, report.kind === 'full' && report.items.length > 0])).toEqual([
      [at('job.wright'), true],
      [at('parts', 'shafts.wright'), false],
    ])
    expect(await findings()).toContain('job/file-not-found')
    renameSync(join(base, 'parts'), path('parts'))
    await happened([at('parts'), created])
    expect((await askAll([])).map(({ uri }) => uri)).toEqual([at('job.wright'), at('parts', 'shafts.wright')])
    expect(await findings()).not.toContain('job/file-not-found')
  })
})

describe('a folder that comes from outside with files in it', () => {
  it('has its files offered, and found in a search', async () => {
    const { path, base, at, client, happened, paths } = await yard()
    await expect.poll(paths).toEqual(['job.wright', 'parts/shafts.wright'])
    mkdirSync(join(base, 'more', 'inner'), { recursive: true })
    writeFileSync(join(base, 'more', 'inner', 'gears.wright'), 'gear moved-in { ratio: 2 }\n')
    renameSync(join(base, 'more'), path('more'))
    await happened([at('more'), created])
    const found = await client.connection.sendRequest<{ location: Location }[]>('workspace/symbol', {
      query: 'moved-in',
    })
    expect(found.map(({ location }) => location.uri)).toEqual([at('more', 'inner', 'gears.wright')])
    await expect.poll(paths).toEqual(['job.wright', 'more/inner/gears.wright', 'parts/shafts.wright'])
    renameSync(path('more'), path('renamed'))
    await happened([at('more'), deleted], [at('renamed'), created])
    await expect.poll(paths).toEqual(['job.wright', 'parts/shafts.wright', 'renamed/inner/gears.wright'])
  })

  it('is not looked for in folders that are not searched', async () => {
    const { path, at, happened, paths } = await yard()
    for (const name of ['node_modules', '.git']) {
      mkdirSync(path(name, 'x'), { recursive: true })
      writeFileSync(path(name, 'x', 'y.wright'), '')
      await happened([at(name, 'x'), created])
    }
    await expect.poll(paths).toEqual(['job.wright', 'parts/shafts.wright'])
  })
})

describe('an editor that does not watch the disk', () => {
  it.each([
    ['workspace/didDeleteFiles', (uri: string) => ({ files: [{ uri }] })],
    ['workspace/didRenameFiles', (uri: string) => ({ files: [{ oldUri: uri, newUri: `${uri}-2` }] })],
  ])('tells with %s', async (method, params) => {
    const { path, at, told, client, isSaid, paths } = await yard({ watches: false })
    expect(client.initialized.capabilities.workspace?.fileOperations).toMatchObject({
      willRename: {},
      didCreate: {},
      didRename: {},
      didDelete: {},
    })
    await isSaid('job/file-not-found', false)
    renameSync(path('parts'), path('parts-2'))
    await told(method, params(at('parts')))
    await isSaid('job/file-not-found', true)
    await expect.poll(paths).toEqual(['job.wright', 'parts-2/shafts.wright'])
    renameSync(path('parts-2'), path('parts'))
    await told('workspace/didCreateFiles', { files: [{ uri: at('parts') }] })
    await isSaid('job/file-not-found', false)
  })
})

describe('of two workspace folders, one in the other,', () => {
  it('the inner one may go and come back', async () => {
    const { path, at, client, happened } = await yard({ folders: ['yard', 'yard/parts'] })
    const uri = at('parts', 'inner.wright')
    client.open(uri, 'use "shafts.wright"\n')
    await client.published(uri, ({ diagnostics }) => !codes(diagnostics).includes('job/file-not-found'))
    rmSync(path('parts'), { recursive: true })
    await happened([at('parts'), deleted])
    await client.published(uri, ({ diagnostics }) => codes(diagnostics).includes('job/file-not-found'))
    mkdirSync(path('parts'))
    writeFileSync(path('parts', 'shafts.wright'), stock)
    await happened([at('parts'), created])
    await client.published(uri, ({ diagnostics }) => !codes(diagnostics).includes('job/file-not-found'))
  })
})

describe('a file that was deleted without a word', () => {
  const position = { line: 1, character: 'drive d { shaft { like: st'.length }
  it.each([
    ['textDocument/references', { position, context: { includeDeclaration: true } }],
    ['textDocument/rename', { position, newName: 'other' }],
    ['textDocument/definition', { position }],
    ['textDocument/prepareTypeHierarchy', { position }],
    ['textDocument/documentLink', {}],
    ['workspace/symbol', { query: 'stock' }],
    ['workspace/willRenameFiles', { files: [{ oldUri: 'file:///none/a', newUri: 'file:///none/b' }] }],
  ])('is no fault to %s, nor is its folder as a file', async (method, params) => {
    const { path, at, client, isSaid } = await yard()
    await isSaid('job/file-not-found', false)
    const ask = () =>
      client.connection.sendRequest(method, { textDocument: { uri: at('job.wright') }, ...params }).then(
        () => 'answered',
        ({ code }) => (code === LSPErrorCodes.RequestFailed ? 'answered' : code),
      )
    rmSync(path('parts'), { recursive: true })
    expect(await ask()).toBe('answered')
    writeFileSync(path('parts'), 'no folder')
    expect(await ask()).toBe('answered')
    mkdirSync(path('folder.wright'))
    expect(await ask()).toBe('answered')
    expect(client.log).toEqual([])
  })
})

it('a folder that cannot be read is in the log, once for as long as it cannot', async () => {
  let denied = true
  const client = await startHere(
    {
      read: () => undefined,
      list: (_, unread) => {
        if (denied) unread('file:///yard/locked', 'permission denied')
        return []
      },
      today: () => '2026-03-04',
    },
    { workspaceFolders: [{ uri: 'file:///yard', name: 'yard' }] },
  )
  const words = 'file:///yard/locked cannot be read: permission denied. The job files in it are not checked.'
  const listAgain = async () => {
    const changes = [{ uri: 'file:///yard/locked', type: created }]
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', { changes })
    await client.connection.sendRequest('workspace/symbol', { query: '' })
  }
  await listAgain()
  await listAgain()
  expect(client.log).toEqual([words])
  denied = false
  await listAgain()
  expect(client.log).toEqual([words])
  denied = true
  await listAgain()
  expect(client.log).toEqual([words, words])
})

describe('an editor that reads files for the server, as in a browser,', () => {
  // What a folder of anybody's, or a broken provider of files, may bring.
  const hostile: readonly (readonly [string, unknown, unknown])[] = [
    ['nothing', null, null],
    ['a number', 5, 5],
    ['lists of what is no URI', 'text', ['', '%', 'file://%', 5, null, {}]],
    ['a list that is none', { text: 'x' }, 'file:///yard/a.wright'],
    ['noise', '\u0000\uFFFF{{{{"'.repeat(1000), ['file:///yard/\u0000.wright']],
    ['a file that uses itself', 'use "job.wright"\nuse "../../x.wright"\n', ['file:///yard/job.wright']],
  ]
  it.each(hostile)('may answer with %s', async (_, text, uris) => {
    const client = await startHere(
      (connection) => ({ ...clientFiles(connection), today: () => '2026-03-04' }),
      { workspaceFolders: [{ uri: 'vscode-vfs://any/yard', name: 'yard' }] },
      (connection) => {
        connection.onRequest(readFile, () => text)
        connection.onRequest(listFiles, () => uris)
      },
    )
    const uri = 'vscode-vfs://any/yard/boat.wright'
    client.open(uri, job)
    await client.published(uri)
    const textDocument = { uri }
    for (const [method, params] of [
      ['textDocument/references', { position: { line: 1, character: 7 }, context: {} }],
      ['workspace/symbol', { query: '' }],
      ['textDocument/completion', { position: { line: 0, character: 5 } }],
    ] as const)
      await client.connection.sendRequest(method, { textDocument, ...params })
    expect(client.log).toEqual([])
  })
})
