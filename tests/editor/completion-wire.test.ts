import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { CompletionList, SignatureHelp } from 'vscode-languageserver/node'
import { startProcess } from './client.ts'

const folder = mkdtempSync(join(tmpdir(), 'completion-'))
const text = `use ""
drive d {
  seal {

  }
  coupling {
    kind:
    bolts: 4 x M10
    flange-diameter: 35m
  }
}
`

/** An editor that knows snippets, or one that does not. */
function server(snippetSupport: boolean) {
  let process: Awaited<ReturnType<typeof startProcess>>
  const uri = String(pathToFileURL(join(folder, 'boat.wright')))
  const start = async () => {
    process = await startProcess({
      workspaceFolders: [{ uri: String(pathToFileURL(folder)), name: 'jobs' }],
      capabilities: {
        textDocument: {
          completion: {
            completionItem: { snippetSupport, ...(snippetSupport && { documentationFormat: ['markdown'] }) },
          },
        },
      },
    })
    process.client.open(uri, text)
    await process.client.published(uri)
  }
  const ask = <R>(method: string, line: number, character: number, more: object = {}): Promise<R> =>
    process.client.connection.sendRequest(`textDocument/${method}`, {
      textDocument: { uri },
      position: { line, character },
      ...more,
    })
  const item = async (label: string, ...at: [line: number, character: number]) =>
    (await ask<CompletionList>('completion', ...at)).items.find((found) => found.label === label)
  return {
    start,
    stop: () => process.stop(),
    capabilities: () => process.client.initialized.capabilities,
    ask,
    item,
  }
}

beforeAll(() => {
  writeFileSync(join(folder, 'boat.wright'), text)
  writeFileSync(join(folder, 'parts.wright'), 'shaft stock { diameter: 35 mm }\n')
})
afterAll(() => rmSync(folder, { recursive: true }))

describe('completion over the wire', () => {
  const { start, stop, capabilities, ask, item } = server(true)
  beforeAll(start)
  afterAll(stop)

  it('is offered with its characters', () => {
    expect(capabilities()).toMatchObject({
      completionProvider: { triggerCharacters: [' ', '.', '"', '[', '/'] },
      signatureHelpProvider: { triggerCharacters: expect.arrayContaining([':', ' ', ',']) },
    })
  })

  it('gives each item its words, its place and its order', async () => {
    const { items } = await ask<CompletionList>('completion', 3, 2)
    expect(items.map(({ sortText }) => sortText)).toEqual(items.map(({ sortText }) => sortText).toSorted())
    expect(items.find(({ label }) => label === 'free-length')).toMatchObject({
      filterText: 'free-length',
      insertTextFormat: 2,
      documentation: { kind: 'markdown', value: expect.stringContaining('free-length: 148 mm') },
      textEdit: {
        range: { start: { line: 3, character: 0 }, end: { line: 3, character: 0 } },
        newText: `free-length: \${1:free length} mm`,
      },
    })
  })

  it('has no signs of Markdown in what is shown as plain text: LSP 3.17, CompletionItem.detail', async () => {
    const details = (await ask<CompletionList>('completion', 3, 2)).items.map(({ detail }) => detail ?? '')
    expect(details.join('\n')).toContain('limits of length: a..b, max')
    expect(details.join('\n')).not.toContain('`')
  })

  it('puts a space behind the colon, and before a unit', async () => {
    expect((await item('mm', 8, 24))?.textEdit?.newText).toBe(' mm')
    expect((await item('flexible', 6, 9))?.textEdit?.newText).toBe(' flexible')
  })

  it('knows the files of the folder', async () => {
    expect(await item('parts.wright', 0, 5)).toMatchObject({
      kind: 17,
      textEdit: { newText: 'parts.wright' },
    })
  })

  it('is not in the way of a space that begins a line', async () => {
    const context = { triggerKind: 2, triggerCharacter: ' ' }
    expect(await ask('completion', 3, 2, { context })).toBeNull()
  })

  it('says how bolts are written, and which part is next', async () => {
    const help = await ask<SignatureHelp>('signatureHelp', 7, 18)
    expect(help.signatures[0]?.label).toBe('bolts: number x thread class mark, torque')
    expect(help).toMatchObject({ activeSignature: 0, activeParameter: 1 })
    expect(help.signatures[0]?.documentation).toMatchObject({ kind: 'plaintext' })
    expect(help.signatures[0]?.parameters?.[1]?.label).toEqual([16, 22])
  })
})

describe('completion for an editor without snippets', () => {
  const { start, stop, item } = server(false)
  beforeAll(start)
  afterAll(stop)

  it('writes the name of a fact, for its value is still to come', async () => {
    const found = await item('free-length', 3, 0)
    expect(found?.textEdit?.newText).toBe('free-length: ')
    expect(found?.insertTextFormat).toBeUndefined()
    expect(found?.documentation).toMatchObject({
      kind: 'plaintext',
      value: expect.stringMatching(/^seal: free-length\n/),
    })
  })
})
