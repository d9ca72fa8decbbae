// Both sides of a comparison: the file as it was, under a URI of the shape that git's have in VS Code, with its libraries as they were.
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { listFiles, type ReadFileParams, readFile } from '../../server/src/editor/client-requests.ts'
import { isRevision, stateOf } from '../../server/src/host/revision.ts'
import { folderAsOf, folderOf, keyOf, uriOf } from '../../server/src/host/uri.ts'
import { startProcess } from './client.ts'

const git = (path: string, ref: string, query: object = { path, ref }): string =>
  `git:${path}?${encodeURIComponent(JSON.stringify(query))}`

describe('the key of an older revision', () => {
  it('is one however it is spelt, and differs from others in its path alone', () => {
    const key = keyOf(git('/jobs/boats/a.wright', 'HEAD'))
    expect(keyOf(key)).toBe(key)
    expect(keyOf('git:/jobs/boats/a.wright?{"path":"/jobs/boats/a.wright","ref":"HEAD"}')).toBe(key)
    expect(key.endsWith('/jobs/boats/a.wright')).toBe(true)
    const other = keyOf(git('/jobs/parts/b.wright', 'HEAD'))
    expect(stateOf(other)).toBe(stateOf(key))
    expect(stateOf(keyOf(git('/jobs/parts/b.wright', '~')))).not.toBe(stateOf(key))
    expect(folderAsOf('file:///jobs', key)).toBe(`${stateOf(key)}/jobs`)
    expect(folderAsOf('file:///jobs', 'file:///jobs/a.wright')).toBe('file:///jobs')
    expect(folderOf(key)).toBe(`${stateOf(key)}/jobs/boats`)
  })

  it.each([
    [
      'the whole path',
      { path: '/jobs/boats/a.wright', ref: 'HEAD' },
      { path: '/jobs/b c.wright', ref: 'HEAD' },
    ],
    [
      'the path from a folder on',
      { path: 'boats/a.wright', commit: '1' },
      { path: 'b c.wright', commit: '1' },
    ],
    ['nothing of the path', { ref: 'x' }, { ref: 'x' }],
    [
      'the path deep inside',
      { of: [{ file: 'boats/a.wright' }], deep: { as: 'a.wrong' } },
      { of: [{ file: 'b c.wright' }], deep: { as: 'a.wrong' } },
    ],
  ])('gives the URI of another file of the same revision, where the query has %s', (_, from, to) => {
    const state = stateOf(keyOf(git('/jobs/boats/a.wright', '', from)))
    const uri = new URL(uriOf(`${state}/jobs/b c.wright`))
    expect(uri.pathname).toBe('/jobs/b%20c.wright')
    expect(JSON.parse(decodeURIComponent(uri.search.slice(1)))).toEqual(to)
  })

  it('knows the backslashes of Windows', () => {
    const key = keyOf(git('/C:/jobs/boats/a.wright', '', { path: 'c:\\jobs\\boats\\a.wright', ref: '~' }))
    const uri = uriOf(`${stateOf(key)}/c:/jobs/b.wright`)
    expect(JSON.parse(decodeURIComponent(uri.split('?')[1] ?? ''))).toEqual({
      path: 'c:\\jobs\\b.wright',
      ref: '~',
    })
  })

  it('is none for a file as it is now, and leaves a query that is no data alone', () => {
    for (const uri of [
      'file:///a.wright',
      'untitled:Untitled-1',
      'untitled:/a.wright',
      'vscode-vfs://h/a.wright',
    ])
      expect(isRevision(uri), uri).toBe(false)
    expect(uriOf(keyOf('hg://host/a%20b.wright?rev%3D7'))).toBe('hg://host/a%20b.wright?rev%3D7')
  })
})

const job = (extra = '') => `use "../parts/seals.wright"
job "J" { vessel: "V" }
drive main { seal { like: standard  fitted-length: 121 mm }${extra} }
`
const library = (length: number) => `seal standard { free-length: ${length} mm }\n`

describe('an older revision that is open', () => {
  const asked: string[] = []
  let served: Awaited<ReturnType<typeof startProcess>>
  beforeAll(async () => {
    const folders = [{ uri: 'file:///jobs', name: 'jobs' }]
    served = await startProcess({ workspaceFolders: folders }, (connection) => {
      connection.onRequest(listFiles, () => [])
      connection.onRequest(readFile, ({ uri, root }: ReadFileParams) => {
        asked.push(decodeURIComponent(root.split('?')[0] ?? ''))
        const { path, ref } = JSON.parse(decodeURIComponent(uri.split('?')[1] ?? ''))
        return path === '/jobs/parts/seals.wright' ? library(ref === 'old' ? 140 : 150) : null
      })
    })
  })
  afterAll(() => served.stop())

  const uri = git('/jobs/boats/a.wright', 'old')
  const hoverAt = async (of: string) => {
    const line = 2
    const character = job().split('\n')[line]?.indexOf('standard') ?? 0
    const params = { textDocument: { uri: of }, position: { line, character } }
    const { contents } = (await served.client.connection.sendRequest('textDocument/hover', params)) as {
      contents: { value: string }
    }
    return JSON.stringify(contents)
  }

  it('means what it meant, with its libraries of the same revision', async () => {
    served.client.open(uri, job())
    served.client.open(git('/jobs/boats/a.wright', 'new'), job())
    await expect.poll(() => hoverAt(uri), { timeout: 20_000 }).toContain('140')
    await expect.poll(() => hoverAt(git('/jobs/boats/a.wright', 'new')), { timeout: 20_000 }).toContain('150')
    expect(new Set(asked)).toEqual(new Set(['git:/jobs']))
  })

  it('has no findings, no fixes and no renames, and is no part of the workspace', async () => {
    const { connection } = served.client
    const faulty = git('/jobs/boats/b.wright', 'old')
    served.client.open(faulty, 'seal s { free-length: 1 }\n')
    const textDocument = { uri: faulty }
    const pulled = await connection.sendRequest('textDocument/diagnostic', { textDocument })
    expect(pulled).toEqual({ kind: 'full', items: [] })
    const range = { start: { line: 0, character: 0 }, end: { line: 1, character: 0 } }
    const context = { diagnostics: [] }
    expect(await connection.sendRequest('textDocument/codeAction', { textDocument, range, context })).toEqual(
      [],
    )
    const position = { line: 0, character: 5 }
    for (const method of ['textDocument/prepareRename', 'textDocument/rename'])
      await expect(connection.sendRequest(method, { textDocument, position, newName: 't' })).rejects.toThrow(
        'older revision',
      )
    expect(await connection.sendRequest('workspace/symbol', { query: '' })).toEqual([])
    // Told of the file as it is now, and never of this one.
    served.client.open('file:///jobs/boats/b.wright', 'seal s { free-length: 1 }\n')
    const told = await served.client.published('file:///jobs/boats/b.wright')
    expect(told.diagnostics.length).toBeGreaterThan(0)
    expect(served.client.toldOf(faulty)).toBe(false)
  })
})
