import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { PublishDiagnosticsNotification, type PublishDiagnosticsParams } from 'vscode-languageserver/node'
import { type Client, codes, startProcess } from './client.ts'

const faulty = 'drive d {\n  shaft { diameter: 35 }\n}\n'
const sound = 'drive d {\n  shaft { diameter: 35 mm }\n}\n'

let process: Awaited<ReturnType<typeof startProcess>>
let client: Client
const publications: PublishDiagnosticsParams[] = []
const change = (uri: string, version: unknown, text: string) =>
  client.connection.sendNotification('textDocument/didChange', {
    textDocument: { uri, version },
    contentChanges: [{ text }],
  })
/** Requests are answered in the order they are sent. Findings come once nothing else waits, so with the answer to the second of two that are
 * asked one after the other. */
async function settled(): Promise<void> {
  for (const uri of ['untitled:None', 'untitled:Nor'])
    await client.connection.sendRequest('textDocument/hover', {
      textDocument: { uri },
      position: { line: 0, character: 0 },
    })
}

beforeAll(async () => {
  process = await startProcess()
  client = process.client
  client.connection.onNotification(
    PublishDiagnosticsNotification.type,
    (told) => void publications.push(told),
  )
})
afterAll(async () => expect(await process.stop()).toBe(0))
beforeEach(() => void publications.splice(0))

describe('version numbers, which increase with every change (LSP 3.17, VersionedTextDocumentIdentifier)', () => {
  it.each([4, 5])(
    'a change to version %i is passed over when version 5 is held, and logged',
    async (late) => {
      const uri = `untitled:Late${late}`
      client.open(uri, sound, 5)
      await change(uri, late, faulty)
      await settled()
      expect(publications.map(({ version }) => version)).toEqual([5])
      expect(client.log.join('\n')).toContain(`${uri} is already at version 5`)
      await change(uri, 6, faulty)
      await settled()
      expect(publications.at(-1)).toMatchObject({ uri, version: 6 })
      expect(codes(publications.at(-1)?.diagnostics ?? [])).toContain('job/unit-missing')
    },
  )

  it.each([null, undefined])('a change with version %s is taken, and published without one', async (none) => {
    const uri = `untitled:Versionless-${none}`
    client.open(uri, sound, 5)
    await change(uri, none, faulty)
    await settled()
    expect(codes(publications.at(-1)?.diagnostics ?? [])).toContain('job/unit-missing')
    expect(publications.at(-1)).not.toHaveProperty('version')
    await change(uri, 6, sound)
    await settled()
    expect(publications.at(-1)?.version).toBe(6)
  })
})

describe('what is published', () => {
  const [one, two] = ['untitled:One', 'untitled:Two'] as const
  const told = () => publications.map(({ uri, version }) => [uri, version])

  it('is only what changed', async () => {
    client.open(one, faulty)
    client.open(two, faulty)
    await settled()
    expect(told()).toEqual([
      [one, 1],
      [two, 1],
    ])
    await client.connection.sendNotification('textDocument/didSave', { textDocument: { uri: one } })
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [] })
    await settled()
    expect(publications).toHaveLength(2)
  })

  it('comes again with a new version though it finds the same', async () => {
    await change(one, 2, faulty)
    await settled()
    expect(told()).toEqual([[one, 2]])
  })

  it('is emptied at a close, and comes again at the next opening', async () => {
    await client.connection.sendNotification('textDocument/didClose', { textDocument: { uri: one } })
    client.open(one, faulty, 2)
    await settled()
    expect(told()).toEqual([
      [one, undefined],
      [one, 2],
    ])
    expect(publications[0]?.diagnostics).toEqual([])
  })
})
