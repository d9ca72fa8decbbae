import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { PassThrough } from 'node:stream'
import { pathToFileURL } from 'node:url'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import {
  createConnection,
  createProtocolConnection,
  ErrorCodes,
  type Hover,
  HoverRequest,
  ProposedFeatures,
  StreamMessageReader,
  StreamMessageWriter,
  type TextEdit,
} from 'vscode-languageserver/node'
import type { Feature } from '../../server/src/editor/feature.ts'
import { feature } from '../../server/src/editor/feature.ts'
import { features } from '../../server/src/editor/features.ts'
import { startServer } from '../../server/src/editor/server.ts'
import type { Host } from '../../server/src/host/host.ts'
import { keyOf } from '../../server/src/host/uri.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { type Client, codes, initialize, startOverIpc, startProcess } from './client.ts'

const faulty = `drive d {
  shaft { diameter: 35 }
}
`
const docs = 'https://docs.example/checks'

describe('the server over standard input and output', () => {
  let process: Awaited<ReturnType<typeof startProcess>>
  let client: Client
  const uri = 'untitled:Untitled-1'
  const ask = <R>(method: string, position: object): Promise<R> =>
    client.connection.sendRequest<R>(method, { textDocument: { uri }, position })
  const change = (version: number, contentChanges: unknown, of = uri) =>
    client.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: of, version },
      contentChanges,
    })

  beforeAll(async () => {
    process = await startProcess({
      initializationOptions: { docs },
      capabilities: { textDocument: { hover: { contentFormat: ['markdown', 'plaintext'] } } },
    })
    client = process.client
    client.open(uri, faulty)
  })
  // The last word of the protocol: exit after shutdown is code 0 (LSP 3.17, exit notification).
  afterAll(async () => expect(await process.stop()).toBe(0))

  it('says what it can', () => {
    expect(client.initialized.capabilities).toMatchObject({
      positionEncoding: 'utf-16',
      textDocumentSync: { openClose: true, change: 2 },
      hoverProvider: true,
      documentFormattingProvider: true,
    })
  })

  it('publishes what it finds, with its check, page, place and words', async () => {
    const { diagnostics, version } = await client.published(uri)
    expect(version).toBe(1)
    const one = diagnostics.find(({ code }) => code === 'job/unit-missing')
    expect(one).toMatchObject({
      severity: 1,
      source: 'shaftwright',
      codeDescription: { href: `${docs}/job/unit-missing.md` },
      range: { start: { line: 1, character: 20 }, end: { line: 1, character: 22 } },
    })
    expect(String(one?.message).split('\n')).toHaveLength(2)
  })

  it('says them in plain text: LSP 3.17, Diagnostic.message', async () => {
    const bare = 'untitled:Untitled-bare'
    client.open(
      bare,
      'job "x" { vessel: "v"  status: draft }\ndrive d {\n  reading one { taken: 2026-03-04 }\n}\n',
    )
    const { diagnostics } = await client.published(bare)
    const words = diagnostics.map(({ message }) => message).join('\n')
    expect(words).toContain('Write it, such as gauge: ')
    expect(words).not.toContain('`')
  })

  it('follows a change of a few characters', async () => {
    const at = { line: 1, character: 22 }
    await change(2, [{ range: { start: at, end: at }, text: ' mm' }])
    const { diagnostics } = await client.published(uri, ({ version }) => version === 2)
    expect(codes(diagnostics)).not.toContain('job/unit-missing')
  })

  it('answers a hover with the place it is about', async () => {
    const hover = await ask<Hover>('textDocument/hover', { line: 1, character: 12 })
    expect(hover.contents).toMatchObject({
      kind: 'markdown',
      value: expect.stringContaining('35 mm (1.378 in)'),
    })
    expect(hover.range).toEqual({ start: { line: 1, character: 10 }, end: { line: 1, character: 18 } })
  })

  it('has nothing to say beyond the end of the text, or about a text that is not open', async () => {
    expect(await ask('textDocument/hover', { line: 4000, character: 7 })).toBeNull()
    const other = { textDocument: { uri: 'untitled:Other' }, position: { line: 0, character: 0 } }
    expect(await client.connection.sendRequest('textDocument/hover', other)).toBeNull()
  })

  it('counts characters as UTF-16 units', async () => {
    await change(3, [{ text: 'job "⚓️ 𝄞" { vessel: "A"  colour: 1 }' }])
    const { diagnostics } = await client.published(uri, ({ version }) => version === 3)
    const one = diagnostics.find(({ code }) => code === 'job/fact-unknown')
    expect(one?.range.start).toEqual({ line: 0, character: 'job "⚓️ 𝄞" { vessel: "A"  '.length })
  })

  it('formats the text, and has nothing to do the second time', async () => {
    const loose = 'drive d {\nshaft {\n      diameter:35 mm\n}\n}\n'
    await change(4, [{ text: loose }])
    const format = () =>
      client.connection.sendRequest<TextEdit[]>('textDocument/formatting', {
        textDocument: { uri },
        options: { tabSize: 8, insertSpaces: false },
      })
    const [edit, ...more] = await format()
    expect(more).toEqual([])
    expect(edit).toEqual({
      range: { start: { line: 0, character: 0 }, end: { line: 5, character: 0 } },
      newText: formatText(loose),
    })
    await change(5, [{ text: edit?.newText }])
    expect(await format()).toEqual([])
  })

  it('refuses a request it does not know', async () => {
    await expect(client.connection.sendRequest('textDocument/unheardOf', {})).rejects.toMatchObject({
      code: ErrorCodes.MethodNotFound,
    })
  })

  // JSON-RPC 2.0, Error object: -32602 is for params that are not valid.
  it.each([
    ['textDocument/hover', {}],
    ['textDocument/hover', { textDocument: { uri }, position: { line: 'one', character: 0 } }],
    ['textDocument/hover', { textDocument: { uri }, position: { line: -1, character: 0 } }],
    ['textDocument/documentSymbol', {}],
    ['textDocument/diagnostic', { textDocument: 7 }],
    ['textDocument/rename', { textDocument: { uri }, position: { line: 0, character: 0 } }],
    ['textDocument/inlayHint', { textDocument: { uri }, range: null }],
    ['textDocument/selectionRange', { textDocument: { uri }, positions: {} }],
    ['textDocument/codeAction', { textDocument: { uri } }],
    ['workspace/symbol', {}],
    ['workspace/willRenameFiles', { files: [{}] }],
    ['typeHierarchy/subtypes', { item: {} }],
  ])('refuses %s with %j, in one line of the log', async (method, params) => {
    const before = client.log.length
    await expect(client.connection.sendRequest(method, params)).rejects.toMatchObject({ code: -32602 })
    const said = client.log.slice(before)
    expect(said).toHaveLength(1)
    expect(said[0]).not.toContain('\n')
  })

  it.each([
    ['textDocument/didOpen', {}],
    ['textDocument/didOpen', { textDocument: { uri: 'untitled:Other' } }],
    ['textDocument/didClose', { textDocument: null }],
    ['textDocument/didSave', {}],
    ['textDocument/didChange', { textDocument: { uri }, contentChanges: 'everything' }],
    ['textDocument/didChange', { textDocument: { uri }, contentChanges: [{ text: 'x' }, {}] }],
    ['textDocument/didChange', { textDocument: { uri }, contentChanges: [{ range: 5, text: 'x' }] }],
    ['workspace/didChangeWatchedFiles', { changes: [{}] }],
    ['workspace/didChangeWorkspaceFolders', { event: null }],
  ])('passes %s with %j over, in one line of the log', async (method, params) => {
    const before = client.log.length
    await client.connection.sendNotification(method, params as object)
    expect(await ask('textDocument/hover', { line: 0, character: 1 })).not.toBeNull()
    const said = client.log.slice(before)
    expect(said).toEqual([expect.stringMatching(new RegExp(`^${method}: .* not as LSP 3.17 has it$`))])
  })

  it.each([undefined, null, {}, { settings: null }, { settings: { shaftwright: 'none' } }])(
    'takes settings as they come: %j',
    async (params) => {
      const before = client.log.length
      await client.connection.sendNotification('workspace/didChangeConfiguration', params as object)
      expect(await ask('textDocument/hover', { line: 0, character: 1 })).not.toBeNull()
      expect(client.log.slice(before).join('')).not.toContain('failed')
    },
  )

  it('passes over a notice it does not know', async () => {
    await client.connection.sendNotification('no/such', { a: 1 })
    expect(await ask('textDocument/hover', { line: 0, character: 1 })).not.toBeNull()
  })

  it('takes no part of a change of which another part makes no sense', async () => {
    const nowhere = { start: { line: -1, character: 0 }, end: { line: 0, character: 0 } }
    await change(6, [{ text: '' }, { range: nowhere, text: 'x' }])
    expect(await ask('textDocument/hover', { line: 0, character: 1 })).not.toBeNull()
  })

  it('says so when a text changes that is not open', async () => {
    await change(1, [{ text: faulty }], 'untitled:Never')
    await ask('textDocument/hover', { line: 0, character: 1 })
    expect(client.log.join('\n')).toContain('untitled:Never is not open')
  })

  it('lives through a megabyte of noise', async () => {
    // Every byte of a linear congruential generator: noise that is the same on every run.
    let state = 7
    const noise = Array.from({ length: 1 << 20 }, () => {
      state = (state * 1103515245 + 12345) % 2 ** 31
      return String.fromCharCode(9 + ((state >> 16) % 118))
    }).join('')
    const loud = 'untitled:Noise'
    client.open(loud, noise)
    const { diagnostics } = await client.published(loud)
    expect(diagnostics.length).toBeGreaterThan(1000)
    expect(await ask('textDocument/hover', { line: 0, character: 1 })).not.toBeNull()
  }, 60_000)

  it('clears the findings of a text that is closed', async () => {
    client.open('untitled:Closing', faulty)
    await client.published('untitled:Closing', ({ diagnostics }) => diagnostics.length > 0)
    await client.connection.sendNotification('textDocument/didClose', {
      textDocument: { uri: 'untitled:Closing' },
    })
    const { version } = await client.published(
      'untitled:Closing',
      ({ diagnostics }) => diagnostics.length === 0,
    )
    expect(version).toBeUndefined()
  })
})

describe('files on disk', () => {
  const base = mkdtempSync(join(tmpdir(), 'shaftwright-'))
  const root = join(base, 'jöbs & more')
  const at = (name: string) => pathToFileURL(join(root, name)).href
  const put = (name: string, text: string) => writeFileSync(join(root, name), text)
  const boat = (library: string) => `use "${library}"\ndrive d { shaft { like: stock } }\n`
  let process: Awaited<ReturnType<typeof startProcess>>

  beforeAll(async () => {
    mkdirSync(join(root, 'parts'), { recursive: true })
    put('parts/shafts.wright', 'shaft stock { diameter: 35 mm  length: 2 m }\n')
    writeFileSync(join(base, 'outside.wright'), 'shaft stock { diameter: 35 mm }\n')
    symlinkSync(join(base, 'outside.wright'), join(root, 'link.wright'))
    process = await startProcess({ workspaceFolders: [{ uri: pathToFileURL(root).href, name: 'jobs' }] })
  })
  afterAll(async () => {
    await process.stop()
    rmSync(base, { recursive: true })
  })

  it('reads what a job uses, follows the editor when it is open there, and the disk again when it is closed', async () => {
    const { client } = process
    const job = at('boat.wright')
    client.open(job, boat('parts/shafts.wright'))
    expect(codes((await client.published(job)).diagnostics)).not.toContain('job/unresolved')

    client.open(at('parts/shafts.wright'), 'shaft other { diameter: 35 mm }\n')
    await client.published(job, ({ diagnostics }) => codes(diagnostics).includes('job/unresolved'))

    const textDocument = { uri: at('parts/shafts.wright'), version: 2 }
    const range = { start: { line: 0, character: 6 }, end: { line: 0, character: 11 } }
    await client.connection.sendNotification('textDocument/didChange', {
      textDocument,
      contentChanges: [{ range, text: 'stock' }],
    })
    await client.published(job, ({ diagnostics }) => !codes(diagnostics).includes('job/unresolved'))

    put('parts/shafts.wright', 'shaft third { diameter: 35 mm }\n')
    await client.connection.sendNotification('textDocument/didClose', { textDocument })
    await client.published(job, ({ diagnostics }) => codes(diagnostics).includes('job/unresolved'))

    put('parts/shafts.wright', 'shaft stock { diameter: 35 mm }\n')
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: textDocument.uri, type: 2 }],
    })
    await client.published(job, ({ diagnostics }) => !codes(diagnostics).includes('job/unresolved'))
  })

  it('shows where an inherited value is written, in the file that was used', async () => {
    const { client } = process
    put('parts/flex.wright', 'coupling flex {\n  flange-diameter: 100 mm\n  gauge-diameter: 120 mm\n}\n')
    const job = at('flex.wright')
    client.open(job, 'use "parts/flex.wright"\ndrive d { coupling { like: flex } }\n')
    const { diagnostics } = await client.published(job)
    const one = diagnostics.find(({ code }) => code === 'alignment/gauge-diameter-beyond-flange')
    expect(
      one?.relatedInformation?.map(({ location: { uri, range } }) => ({ uri: keyOf(uri), range })),
    ).toContainEqual({
      uri: keyOf(at('parts/flex.wright')),
      range: { start: { line: 2, character: 18 }, end: { line: 2, character: 24 } },
    })
  })

  it.each(['../outside.wright', 'link.wright'])('does not read %s, which lies outside', async (library) => {
    const { client } = process
    const job = at(`reads ${library.replaceAll(/\W/g, '-')}.wright`)
    client.open(job, boat(library))
    const { diagnostics } = await client.published(job)
    expect(codes(diagnostics)).toContain('job/unresolved')
    expect(codes(diagnostics)).toContain(library.startsWith('..') ? 'job/file-outside' : 'job/file-not-found')
  })
})

it('serves over IPC, and follows the folders of the workspace', async () => {
  const base = mkdtempSync(join(tmpdir(), 'shaftwright-'))
  mkdirSync(join(base, 'boats'))
  writeFileSync(join(base, 'parts.wright'), 'shaft stock { diameter: 35 mm }\n')
  const job = pathToFileURL(join(base, 'boats', 'a.wright')).href
  const folder = { uri: pathToFileURL(base).href, name: 'jobs' }
  const { client, stop } = await startOverIpc({ capabilities: { workspace: { workspaceFolders: true } } })
  const moved = (event: object) =>
    client.connection.sendNotification('workspace/didChangeWorkspaceFolders', { event })
  const outside = (is: boolean) =>
    client.published(job, ({ diagnostics }) => codes(diagnostics).includes('job/file-outside') === is)

  // Without a folder around it a file sees no further than its own.
  client.open(job, 'use "../parts.wright"\ndrive d { shaft { like: stock } }\n')
  await outside(true)
  await moved({ added: [folder], removed: [] })
  const { diagnostics } = await outside(false)
  expect(codes(diagnostics)).not.toContain('job/unresolved')
  await moved({ added: [], removed: [folder] })
  await outside(true)
  expect(await stop()).toBe(0)
  rmSync(base, { recursive: true })
})

describe('a feature that fails', () => {
  const streams: PassThrough[] = []
  afterEach(() => {
    for (const stream of streams.splice(0)) stream.destroy()
  })

  const connect = (rows: readonly Feature[], host: Partial<Host> = {}): Promise<Client> => {
    const [up, down] = [new PassThrough(), new PassThrough()]
    streams.push(up, down)
    const server = createConnection(
      ProposedFeatures.all,
      new StreamMessageReader(up),
      new StreamMessageWriter(down),
    )
    startServer(server, { read: () => undefined, list: () => [], today: () => '2026-03-04', ...host }, rows)
    return initialize(createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up)))
  }
  const failing = feature(HoverRequest.type, { hoverProvider: true }, () => {
    throw new Error('made to fail')
  })
  const position = { line: 0, character: 1 }

  it('costs one answer and a line in the log', async () => {
    const client = await connect([failing, ...features.filter(({ method }) => method !== failing.method)])
    const textDocument = { uri: 'untitled:A' }
    client.open(textDocument.uri, faulty)
    await expect(
      client.connection.sendRequest('textDocument/hover', { textDocument, position }),
    ).rejects.toMatchObject({ code: ErrorCodes.InternalError })
    expect(client.log.join('\n')).toContain('made to fail')
    await client.connection.sendNotification('textDocument/didChange', {
      textDocument: { ...textDocument, version: 2 },
      contentChanges: [{ text: 'job "A" { }' }],
    })
    expect(await client.published(textDocument.uri, ({ version }) => version === 2)).toBeDefined()
  })

  it('at one file costs that file its findings, not the next', async () => {
    let asked = 0
    const client = await connect(features, {
      today: () => {
        asked += 1
        if (asked === 1) throw new Error('no clock')
        return '2026-03-04'
      },
    })
    client.open('untitled:A', faulty)
    client.open('untitled:B', faulty) // both are looked at once they are open, A first
    expect(codes((await client.published('untitled:B')).diagnostics)).toContain('job/unit-missing')
    expect(client.log.join('\n')).toContain('no clock')
  })

  it('of the host costs one publication, not the answers', async () => {
    const client = await connect(features, {
      today: () => {
        throw new Error('no clock')
      },
    })
    const textDocument = { uri: 'untitled:A' }
    client.open(textDocument.uri, faulty)
    const hover = await client.connection.sendRequest('textDocument/hover', { textDocument, position })
    expect(hover).not.toBeNull()
    await client.connection.sendRequest('textDocument/hover', { textDocument, position })
    expect(client.log.join('\n')).toContain('no clock')
  })
})
