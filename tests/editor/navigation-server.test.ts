// The features of navigation as an editor gets them, from the server in its own process, on files that lie on disk.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import {
  type DocumentLink,
  type DocumentSymbol,
  ErrorCodes,
  FoldingRangeKind,
  type Location,
  ResponseError,
  type SymbolInformation,
  type TypeHierarchyItem,
  type WorkspaceEdit,
} from 'vscode-languageserver/node'
import { type Client, startProcess } from './client.ts'

const parts = 'gear spare { ratio: 2 }\n'
const boat = `# A launch.
# Invented.
use "parts.wright"

drive main {
  gear { like: spare }
}
concession cable/undersized { on: main.gear }
`

describe('the server', () => {
  const folder = mkdtempSync(join(tmpdir(), 'navigation-'))
  const uriOf = (name: string) => pathToFileURL(join(folder, name)).href
  const uri = uriOf('parts.wright')
  const boatUri = uriOf('boat.wright')
  let server: Awaited<ReturnType<typeof startProcess>>
  let client: Client
  const ask = <R>(method: string, of: string, more: object = {}): Promise<R> =>
    client.connection.sendRequest<R>(`textDocument/${method}`, { textDocument: { uri: of }, ...more })
  const range = (line: number, from: number, to: number) => ({
    start: { line, character: from },
    end: { line, character: to },
  })
  const position = { line: 0, character: 6 }

  beforeAll(async () => {
    writeFileSync(join(folder, 'parts.wright'), parts)
    writeFileSync(join(folder, 'boat.wright'), boat)
    server = await startProcess({
      workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'boats' }],
      capabilities: {
        textDocument: {
          documentSymbol: { hierarchicalDocumentSymbolSupport: true },
          rename: { prepareSupport: true },
        },
      },
      initializationOptions: { docs: 'https://docs.example/checks' },
    })
    client = server.client
    client.open(uri, parts)
  })
  afterAll(async () => {
    await server.stop()
    rmSync(folder, { recursive: true })
  })

  it('says what it can', () => {
    expect(client.initialized.capabilities).toMatchObject({
      definitionProvider: true,
      referencesProvider: { workDoneProgress: true },
      documentHighlightProvider: true,
      renameProvider: { prepareProvider: true },
      documentSymbolProvider: true,
      workspaceSymbolProvider: true,
      documentLinkProvider: {},
      foldingRangeProvider: true,
      selectionRangeProvider: true,
      typeHierarchyProvider: true,
    })
  })

  it('finds who refers to a part, also in a file that is not open', async () => {
    const found = await ask<Location[]>('references', uri, {
      position,
      context: { includeDeclaration: false },
    })
    expect(found).toEqual([{ uri: boatUri, range: range(5, 15, 20) }])
    const all = await ask<Location[]>('references', uri, { position, context: { includeDeclaration: true } })
    expect(all).toContainEqual({ uri, range: range(0, 5, 10) })
  })

  it('renames it everywhere', async () => {
    const found = await ask<WorkspaceEdit>('rename', uri, { position, newName: 'stock' })
    expect(found).toEqual({
      changes: {
        [uri]: [{ range: range(0, 5, 10), newText: 'stock' }],
        [boatUri]: [{ range: range(5, 15, 20), newText: 'stock' }],
      },
    })
  })

  it('renames for the version of each text, where the editor takes that', async () => {
    const { client: other, stop } = await startProcess({
      workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'boats' }],
      capabilities: { workspace: { workspaceEdit: { documentChanges: true } } },
    })
    other.open(uri, parts, 7)
    const found = await other.connection.sendRequest('textDocument/rename', {
      textDocument: { uri },
      position,
      newName: 'stock',
    })
    // LSP 3.17, OptionalVersionedTextDocumentIdentifier: null for a file that is not open.
    expect(found).toEqual({
      documentChanges: expect.arrayContaining([
        { textDocument: { uri, version: 7 }, edits: [{ range: range(0, 5, 10), newText: 'stock' }] },
        {
          textDocument: { uri: boatUri, version: null },
          edits: [{ range: range(5, 15, 20), newText: 'stock' }],
        },
      ]),
    })
    await stop()
  })

  it('says in words why it does not', async () => {
    await expect(ask('rename', uri, { position, newName: 'a b' })).rejects.toThrow('"a b" is not a name')
    const onKind = { position: { line: 0, character: 1 } }
    await expect(ask('prepareRename', uri, onKind)).rejects.toThrow('gear is a word of the language.')
    expect(await ask('prepareRename', uri, { position })).toEqual({
      range: range(0, 5, 10),
      placeholder: 'spare',
    })
    expect(client.log).toEqual([])
  })

  it('lists blocks of the workspace, and of a text', async () => {
    const found = await client.connection.sendRequest<SymbolInformation[]>('workspace/symbol', {
      query: 'gear',
    })
    expect(found.map(({ name, location }) => [name, location.uri])).toEqual(
      expect.arrayContaining([
        ['spare', uri],
        ['gear', boatUri],
      ]),
    )
    const [symbol] = await ask<DocumentSymbol[]>('documentSymbol', uri)
    expect(symbol).toMatchObject({ name: 'spare', detail: 'gear, ratio 2', selectionRange: range(0, 5, 10) })
  })

  it('goes up and down what is like what', async () => {
    const [item] = await ask<TypeHierarchyItem[]>('prepareTypeHierarchy', uri, { position })
    const to = (way: string, of: unknown) =>
      client.connection.sendRequest<TypeHierarchyItem[]>(`typeHierarchy/${way}`, { item: of })
    const [down] = await to('subtypes', item)
    expect(down).toMatchObject({ name: 'main.gear', uri: boatUri, selectionRange: range(5, 2, 6) })
    expect(await to('supertypes', down)).toEqual([item])
    expect(await to('supertypes', item)).toEqual([])
  })

  it('answers in a text that uses another', async () => {
    client.open(boatUri, boat)
    const like = { position: { line: 5, character: 17 } }
    expect(await ask<Location>('definition', boatUri, like)).toEqual({ uri, range: range(0, 5, 10) })
    expect(await ask('documentHighlight', boatUri, like)).toEqual([{ range: range(5, 15, 20), kind: 2 }])
    expect(await ask('foldingRange', boatUri)).toEqual([
      { startLine: 0, endLine: 1, kind: FoldingRangeKind.Comment },
      { startLine: 4, endLine: 5 },
    ])
    expect(await ask<DocumentLink[]>('documentLink', boatUri)).toMatchObject([
      { range: range(2, 5, 17), target: uri },
      { range: range(7, 11, 27), target: 'https://docs.example/checks/cable/undersized.md' },
    ])
    const [selection] = await ask<object[]>('selectionRange', boatUri, { positions: [like.position] })
    expect(selection).toMatchObject({ range: range(5, 15, 20), parent: { range: range(5, 9, 20) } })
  })
})

it('an editor that refuses what it is asked first costs that alone', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'refusing-'))
  writeFileSync(join(folder, 'parts.wright'), parts)
  const refuse = () => new ResponseError(ErrorCodes.InternalError, 'not now')
  const { client, stop } = await startProcess(
    {
      workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'boats' }],
      capabilities: {
        workspace: { configuration: true, didChangeWatchedFiles: { dynamicRegistration: true } },
      },
    },
    (connection) => {
      connection.onRequest('client/registerCapability', refuse)
      connection.onRequest('workspace/configuration', refuse)
    },
  )
  await vi.waitFor(async () => {
    const found = await client.connection.sendRequest<SymbolInformation[]>('workspace/symbol', {
      query: 'spare',
    })
    expect(found.map(({ name }) => name)).toEqual(['spare'])
    expect(client.log.map((words) => words.split(' ', 1)[0]).toSorted()).toEqual([
      'client/registerCapability',
      'workspace/configuration',
    ])
  })
  await stop()
  rmSync(folder, { recursive: true })
})

it('an editor that opens a whole disk has it not searched, and is told so', async () => {
  const { client, stop } = await startProcess({ rootUri: 'file:///' })
  expect(client.log).toEqual([expect.stringContaining('file:/// is a whole disk')])
  // LSP 3.17, RenameOptions: for a client with prepareSupport alone.
  expect(client.initialized.capabilities.renameProvider).toBe(true)
  const uri = 'file:///no/such/folder/a.wright'
  client.open(uri, boat)
  const found = await client.connection.sendRequest<Location[]>('textDocument/references', {
    textDocument: { uri },
    position: { line: 4, character: 7 },
    context: { includeDeclaration: true },
  })
  expect(found.map((at) => at.uri)).toEqual([uri, uri])
  await stop()
})
