// What an editor that keeps a plan in view is told and answered.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll, beforeAll, expect, it } from 'vitest'
import {
  type PlanChangedParams,
  type PlanParams,
  type PlanResult,
  planChanged,
  planRequest,
} from '../../server/src/editor/client-requests.ts'
import { startProcess } from './client.ts'

const folder = mkdtempSync(join(tmpdir(), 'shaftwright-'))
const uriOf = (name: string): string => pathToFileURL(join(folder, name)).href
const job = (gap: string) => `use "parts.wright"
job "J" { vessel: "V"  revision: "B"  status: draft }
drive port {
  coupling { like: flange }
  machine { name: "M" }
  reading one { taken: 2026-03-04  gauge: 0.02 mm  gaps: top ${gap} mm, starboard 1.00 mm, bottom 1.00 mm, port 1.00 mm }
}
drive starboard { }
`
const parts = (variation: string) =>
  `coupling flange { flange-diameter: 100 mm  gap-variation: max ${variation} mm }\n`

const told: string[] = []
let news = () => {}
let served: Awaited<ReturnType<typeof startProcess>>
beforeAll(async () => {
  writeFileSync(join(folder, 'a.wright'), job('1.00'))
  writeFileSync(join(folder, 'parts.wright'), parts('0.10'))
  served = await startProcess(
    { workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'jobs' }] },
    (it) =>
      it.onNotification(planChanged, ({ uris }: PlanChangedParams) => {
        told.push(...uris)
        news()
      }),
  )
})
afterAll(async () => {
  await served.stop()
  rmSync(folder, { recursive: true })
})

const uri = uriOf('a.wright')
const ask = (params: Omit<PlanParams, 'textDocument'>, of = uri): Promise<PlanResult> =>
  served.client.connection.sendRequest<PlanResult>(planRequest, { textDocument: { uri: of }, ...params })
const textOf = async (path: string): Promise<string> => {
  const result = await ask({ path })
  if (result.type !== 'plan') throw new Error(JSON.stringify(result))
  return result.text
}
/** Resolves with what is told next. */
const nextNews = (): Promise<void> =>
  new Promise((done) => {
    news = done
  })
const changeTo = (of: string, version: number, text: string) =>
  served.client.connection.sendNotification('textDocument/didChange', {
    textDocument: { uri: of, version },
    contentChanges: [{ text }],
  })

it('answers by path and by place, names its origin, and says which drives there are', async () => {
  served.client.open(uri, job('1.00'))
  const first = await ask({ position: { line: 3, character: 3 } })
  expect(first).toMatchObject({ type: 'plan', path: 'port' })
  expect(await textOf('port')).toMatch(
    /^Vessel: +V\nJob: +J\nRevision: +B \(draft\)\nDate: +\d{4}-\d\d-\d\d\nFile: +a\.wright\n\nport /,
  )
  expect(await ask({ position: { line: 5, character: 9 } })).toMatchObject({ path: 'port.one' })
  expect(await ask({ path: 'port.one' })).toMatchObject({ path: 'port.one' })
  for (const asked of [{ path: 'gone' }, { position: { line: 0, character: 0 } }, {}])
    expect(await ask(asked)).toEqual({ type: 'no-such-drive', drives: ['port', 'starboard'] })
})

it('tells once when the job, or a file that it uses, has changed', async () => {
  const before = await textOf('port')
  told.length = 0
  const changed = nextNews()
  await changeTo(uri, 2, job('1.50'))
  await changed
  await changeTo(uri, 3, job('1.60'))
  const after = await textOf('port')
  expect(after).not.toBe(before)
  expect(told).toEqual([uri])

  const library = uriOf('parts.wright')
  const opened = nextNews()
  served.client.open(library, parts('0.90'))
  await opened
  expect(await textOf('port')).not.toBe(after)
})

it('says when the drive or the file is gone, and follows a file that was closed', async () => {
  await textOf('port')
  const renamed = nextNews()
  await changeTo(uri, 4, job('1.60').replace('drive port', 'drive aft'))
  await renamed
  expect(await ask({ path: 'port' })).toEqual({ type: 'no-such-drive', drives: ['aft', 'starboard'] })
  const closed = nextNews()
  await served.client.connection.sendNotification('textDocument/didClose', { textDocument: { uri } })
  await closed
  // As it stands on disk.
  expect(await textOf('port')).toContain('port')
  const gone = nextNews()
  rmSync(join(folder, 'a.wright'))
  await served.client.connection.sendNotification('workspace/didChangeWatchedFiles', {
    changes: [{ uri, type: 3 }],
  })
  await gone
  expect(await ask({ path: 'port' })).toEqual({ type: 'no-file' })
  expect(await ask({ path: 'port' }, 'untitled:Untitled-9')).toEqual({ type: 'no-file' })
})
