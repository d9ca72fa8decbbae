// npm run bench:many: what questions about a whole workspace of many files take. --files says of how many, --json gives the figures.
import { mkdtempSync, rmSync } from 'node:fs'
import { cpus, loadavg, tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { parseArgs } from 'node:util'
import type { Location, ProtocolConnection } from 'vscode-languageserver/node'
import { nodeFlags } from '../../client/src/node-flags.ts'
import { positionAt } from '../fuzz/edits.ts'
import { serve } from '../fuzz/served.ts'
import { share, writeYard } from './folders.ts'
import { timed } from './samples.ts'

const { values } = parseArgs({
  options: {
    files: { type: 'string', default: '5000' },
    json: { type: 'boolean', default: false },
    main: { type: 'string', default: resolve(import.meta.dirname, '../../dist/server.mjs') },
  },
})

const folder = mkdtempSync(join(tmpdir(), 'shaftwright-many-'))
const capabilities = {
  textDocument: { publishDiagnostics: {}, diagnostic: {} },
  workspace: {
    workspaceFolders: true,
    didChangeWatchedFiles: { dynamicRegistration: true },
    workspaceEdit: { documentChanges: true },
  },
}

try {
  const { job, files } = writeYard(folder, Number(values.files))
  const root = { uri: pathToFileURL(folder).href, name: 'yard' }
  const prepare = (connection: ProtocolConnection) =>
    connection.onRequest('client/registerCapability', () => null)
  const load = loadavg()[0] ?? 0
  const server = await serve({
    main: values.main,
    flags: nodeFlags,
    params: { capabilities, workspaceFolders: [root] },
    prepare,
  })
  const { connection, open } = server.client
  open(job.uri, job.text)
  const at = (word: string) => ({
    textDocument: { uri: job.uri },
    position: positionAt(job.text, job.text.indexOf(word)),
  })
  const ask = (method: string, params: object = {}) => connection.sendRequest<never>(method, params)
  const answered = () => ask('textDocument/hover', at('tender'))
  const references = (word: string, count: number) => async () => {
    const params = { ...at(word), context: { includeDeclaration: true } }
    const found = await connection.sendRequest<Location[]>('textDocument/references', params)
    if (found.length !== count) throw new Error(`${word}: ${found.length} references, not ${count}`)
  }
  const rename = (word: string) => () => ask('textDocument/rename', { ...at(word), newName: 'renamed' })

  /** The time of computing counts too: on a busy machine it is the only one that says anything. */
  const measured: { what: string; seconds: number; computing: number; megabytes: number }[] = []
  const measure = async (what: string, work: () => Promise<unknown>) => {
    const before = await server.memory()
    const milliseconds = await timed(work)
    const { resident, computed } = await server.memory()
    const [seconds, computing] = [milliseconds / 1000, (computed - before.computed) / 1000]
    const megabytes = resident / 1e6
    measured.push({ what, seconds, computing, megabytes })
    if (!values.json)
      console.log(
        `| ${what} | ${seconds.toFixed(2)} s | ${computing.toFixed(2)} s | ${megabytes.toFixed(0)} MB |`,
      )
  }
  const notices = (type: number, count: number) => async () => {
    for (let i = 0; i < count; i++)
      await connection.sendNotification('workspace/didChangeWatchedFiles', {
        changes: [{ uri: `${root.uri}/new/new-${i}.wright`, type }],
      })
    await answered()
  }

  if (!values.json)
    console.log(
      `| ${files} files of 140 lines | time | computing | memory afterwards |\n| :-- | :-- | :-- | :-- |`,
    )
  await answered()
  await measure('references of a name in one file, first', references('tender', 1))
  await measure('references of a name in one file, again', references('tender', 1))
  await measure(
    `references of a part in 1 of 50 files`,
    references('gear-0', 1 + Math.ceil((files - 1) / share)),
  )
  await measure('references of a part in every file', references('gear-of-all', files))
  await measure('rename of a name in one file', rename('tender'))
  await measure('rename of a part in 1 of 50 files', rename('gear-0'))
  await measure('rename of a part in every file', rename('gear-of-all'))
  await measure('search for a block in the workspace', () => ask('workspace/symbol', { query: 'reserve' }))
  await measure('a folder is moved (which `use` lines change)', () =>
    ask('workspace/willRenameFiles', {
      files: [{ oldUri: `${root.uri}/boats-0`, newUri: `${root.uri}/moved/boats-0` }],
    }),
  )
  await measure('100 notices of a new file', notices(1, 100))
  await measure('100 notices of a deleted file', notices(3, 100))
  await measure('200 changes of the folders', async () => {
    for (let i = 0; i < 200; i++) {
      const other = [{ uri: `${root.uri}/boats-0`, name: 'other' }]
      const event = i % 2 === 0 ? { added: other, removed: [] } : { added: [], removed: other }
      await connection.sendNotification('workspace/didChangeWorkspaceFolders', { event })
    }
    await answered()
  })
  const most = await server.memory()
  await server.stop()
  if (values.json) console.log(JSON.stringify({ files, measured, peak: most.peak }, null, 2))
  else
    console.log(
      `\nThe most memory at any time: ${(most.peak / 1e6).toFixed(0)} MB. ${cpus().length} cores, Node ${process.versions.node}, load ${load.toFixed(1)} before.`,
    )
} finally {
  rmSync(folder, { recursive: true, force: true })
}
