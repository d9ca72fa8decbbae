// How far a long search is, and its end before it is done: LSP 3.17, Work Done Progress and Cancellation Support.
import { describe, expect, it } from 'vitest'
import { CancellationTokenSource, LSPErrorCodes, ProgressType } from 'vscode-languageserver/node'
import { startHere } from './client.ts'

const uris = Array.from({ length: 100 }, (_, i) => `file:///yard/boat-${i}.wright`)
const text = 'gear spare { ratio: 2 }\ngear strong { like: spare }\n'

/** A slow disk of many files, with one of them open. */
async function slow(capabilities: object = {}) {
  const client = await startHere(
    {
      read: () => {
        const end = performance.now() + 1
        while (performance.now() < end);
        return text
      },
      list: () => uris,
      today: () => '2026-03-04',
    },
    { workspaceFolders: [{ uri: 'file:///yard', name: 'yard' }], capabilities },
  )
  const [uri = ''] = uris
  client.open(uri, text)
  await client.published(uri)
  const params = {
    textDocument: { uri },
    position: { line: 0, character: 6 },
    context: { includeDeclaration: true },
  }
  return { client, params }
}

describe('a search through many files', () => {
  it('tells how far it is where the request brings a token', async () => {
    const { client, params } = await slow()
    const told: { readonly kind: string; readonly percentage?: number }[] = []
    client.connection.onProgress(new ProgressType<(typeof told)[number]>(), 'search', (value) => {
      told.push(value)
    })
    const found = await client.connection.sendRequest('textDocument/references', {
      ...params,
      workDoneToken: 'search',
    })
    expect(found).toHaveLength(2)
    expect(told[0]).toMatchObject({ kind: 'begin', cancellable: true })
    expect(told.slice(1, -1).map(({ kind }) => kind)).toContain('report')
    expect(told.at(-1)).toEqual({ kind: 'end' })
  })

  it('ends where it is cancelled, and what is asked meanwhile is answered before', async () => {
    const { client, params } = await slow()
    const source = new CancellationTokenSource()
    const search = client.connection.sendRequest('textDocument/references', params, source.token)
    const ended = search.then(
      () => 'answered',
      ({ code }) => code,
    )
    await client.connection.sendRequest('textDocument/hover', params)
    source.cancel()
    expect(await ended).toBe(LSPErrorCodes.RequestCancelled)
  })
})
