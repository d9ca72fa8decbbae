// An editor gone mad: it opens, edits, asks and cancels at random, and now and then looks whether the server still tells the truth.
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { isDeepStrictEqual } from 'node:util'
import {
  CancellationTokenSource,
  type Diagnostic,
  type DocumentDiagnosticReport,
  ErrorCodes,
  ResponseError,
} from 'vscode-languageserver/node'
import { listFiles, readFile } from '../../server/src/editor/client-requests.ts'
import { jobOf } from '../bench/jobs.ts'
import { anyEdit, applied, type Edit, positionAt } from './edits.ts'
import { randomFrom } from './random.ts'
import { type Known, mangled, methods, nothingKnown, soundParams, strays } from './requests.ts'
import { type Served, serve } from './served.ts'
import { within } from './within.ts'

export interface Fault {
  readonly seed: number
  readonly step: number
  readonly words: string
}

export interface Options {
  readonly seed: number
  readonly steps: number
  /** Texts of millions of characters too. */
  readonly large?: boolean
  /** A server that others send to as well, and the number of this editor among them; without it, one of its own. */
  readonly among?: { readonly server: Served; readonly pulls: boolean; readonly number: number }
}

interface Open {
  version: number
  text: string
  known: Known
}

const examples = resolve(import.meta.dirname, '../../docs/examples')
const demos = readdirSync(examples, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.wright'))
  .toSorted()
  .map((path) => readFileSync(join(examples, path), 'utf8'))

const urisOf = (number: number): readonly string[] => [
  ...['a', 'b', 'parts'].map((name) => `file:///fuzzed${number}/${name}.wright`),
  `untitled:Untitled-${number}`,
]
const unknownUris = [
  'file:///fuzzed/nowhere.wright',
  'untitled:None',
  'http://none.invalid/x',
  '',
  'file://%',
  '%',
]
const folders = [
  'file:///fuzzed1',
  'file:///fuzzed1/',
  'file:///fuzzed1/deeper',
  'http://none.invalid/jobs',
  'untitled:x',
  '',
  '%',
].map((uri) => ({
  uri,
  name: 'any',
}))

/** No answer may take longer, on the slowest machine. */
const generous = 20_000

/** A server for editors that request findings, or receive them when they are published. */
export const serveFuzzed = (pulls: boolean, workspaceFolders: readonly object[] | null): Promise<Served> =>
  serve({
    params: {
      capabilities: {
        textDocument: { publishDiagnostics: {}, ...(pulls && { diagnostic: {} }) },
        workspace: { workspaceFolders: true },
      },
      workspaceFolders,
    },
    prepare: (connection) => {
      for (const method of [readFile, listFiles]) connection.onRequest(method, () => null)
    },
  })

/** Runs one such editor. Returns what went wrong. */
export async function fuzzProtocol({
  seed,
  steps,
  large = false,
  among,
}: Options): Promise<readonly Fault[]> {
  const random = randomFrom(seed)
  const faults: Fault[] = []
  let step = 0
  const fault = (words: string) => void faults.push({ seed, step, words })
  const pulls = among?.pulls ?? random.chance(0.5)
  const uris = urisOf(among?.number ?? 1)
  // Many wait for one server, and each has a fresh one started to compare with.
  const patience = among ? 10 * generous : generous
  const server =
    among?.server ?? (await serveFuzzed(pulls, random.pick([null, [], folders.slice(0, 1), folders])))
  const { client } = server
  const { connection } = client
  const open = new Map<string, Open>()
  const running = new Map<Promise<void>, string>()

  // What cannot be written any more is told by how the server ended.
  const tell = (method: string, params: unknown) =>
    void connection.sendNotification(method, params).catch(() => {})
  const ask = (method: string, params: unknown, { sound }: { sound: boolean }) => {
    const source = new CancellationTokenSource()
    const answer = connection
      .sendRequest(method, params, source.token)
      .then(() => {})
      .catch((error: unknown) => {
        if (sound && error instanceof ResponseError && error.code === ErrorCodes.InternalError)
          fault(
            `${client.log.findLast((words) => words.startsWith(`${method} failed`))}\n${JSON.stringify(params)}`,
          )
      })
    const known = answer.finally(() => running.delete(known))
    running.set(known, method)
    // One that waits for news (workspace/diagnostic) is answered when it is cancelled.
    if (random.chance(0.2)) setImmediate(() => source.cancel())
  }

  const anyText = (): string => {
    if (large && random.chance(0.02)) return jobOf(1700)
    const text = random.pick([...demos, jobOf(1), jobOf(3), '', '\uFEFF\r\n'])
    return random.chance(0.3) ? `use "parts.wright"\nuse "../a.wright"\n${text}` : text
  }
  const edits = (file: Open): void => {
    const made: Edit[] = []
    let { text } = file
    const changes = Array.from({ length: random.pick([1, 1, 1, 2, 5]) }, () => {
      if (random.chance(0.01)) {
        text = anyText()
        return { text }
      }
      const edit = anyEdit({ text, size: 6000, random })
      const range = { start: positionAt(text, edit.from), end: positionAt(text, edit.to) }
      made.push(edit)
      text = applied(text, edit)
      return { range: random.chance(0.05) ? { start: range.end, end: range.start } : range, text: edit.text }
    })
    file.version += random.pick([1, 1, 1, 7])
    file.text = text
    tell('textDocument/didChange', {
      textDocument: { uri: uriOfOpen(file), version: file.version },
      contentChanges: changes,
    })
  }
  const uriOfOpen = (file: Open): string => [...open].find(([, other]) => other === file)?.[0] ?? ''
  const anyOpen = (): Open | undefined => (open.size > 0 ? random.pick([...open.values()]) : undefined)

  const doSomething: readonly (readonly [number, () => void])[] = [
    [
      6,
      () => {
        const uri = random.pick(uris)
        const file = { version: random.pick([1, 1, 5]), text: anyText(), known: nothingKnown }
        open.set(uri, file)
        const { version, text } = file
        tell('textDocument/didOpen', { textDocument: { uri, languageId: 'shaftwright', version, text } })
      },
    ],
    [
      3,
      () => {
        const uri = random.pick([...uris, ...unknownUris])
        open.delete(uri)
        tell('textDocument/didClose', { textDocument: { uri } })
      },
    ],
    [
      60,
      () => {
        const file = anyOpen()
        if (file) edits(file)
      },
    ],
    [
      3,
      () => {
        const file = anyOpen()
        if (!file) return
        const late = { uri: uriOfOpen(file), version: file.version - random.below(3) }
        tell('textDocument/didChange', { textDocument: late, contentChanges: [{ text: 'late' }] })
      },
    ],
    [
      3,
      () => {
        // One change that makes no sense spoils all of them: the text stays as it was.
        const uri = random.pick([...uris, ...unknownUris])
        const version = (open.get(uri)?.version ?? 0) + 1
        const bad = random.pick([
          { range: { start: { line: -1, character: 0 }, end: { line: 0, character: 0 } }, text: 'x' },
          { range: { start: { line: 0, character: 0.5 }, end: { line: 0, character: 0 } }, text: 'x' },
          { range: { start: { line: 0 }, end: null }, text: 'x' },
          { range: 5, text: 'x' },
          { text: 5 },
          { text: null },
          {},
          null,
        ])
        tell('textDocument/didChange', {
          textDocument: { uri, version },
          contentChanges: [{ text: 'y' }, bad],
        })
      },
    ],
    [
      2,
      () =>
        tell(
          random.pick(['textDocument/didChange', 'textDocument/didOpen', 'textDocument/didClose']),
          random.pick([null, {}, { textDocument: null }, { textDocument: { uri: 5 } }, { textDocument: {} }]),
        ),
    ],
    [
      20,
      () => {
        const uri = random.pick([...uris, ...uris, ...uris, ...unknownUris])
        const { text, known } = open.get(uri) ?? { text: '', known: nothingKnown }
        const params = soundParams({ uri, text, known, offers: client.initialized.capabilities, random })
        const method = random.pick(methods)
        const sound =
          random.chance(0.6) && (params['item'] !== undefined || !method.startsWith('typeHierarchy/'))
        if (sound) ask(method, params, { sound })
        else ask(method, mangled(params, random), { sound: false })
      },
    ],
    [1, () => ask(random.pick(strays), mangled({ any: [1] }, random), { sound: false })],
    [
      1,
      () =>
        tell('workspace/didChangeConfiguration', {
          settings: random.pick<unknown>([
            null,
            5,
            { shaftwright: { findings: { delay: random.pick<unknown>([0, 20, -1, 'x']) } } },
            {
              shaftwright: {
                inlayHints: { units: random.pick<unknown>(['off', 'mixed', 'always', false, 3]) },
              },
            },
          ]),
        }),
    ],
    [
      1,
      () =>
        tell('workspace/didChangeWorkspaceFolders', {
          event: random.pick<unknown>([
            { added: [], removed: random.pick([[], folders]) },
            { added: [random.pick(folders)], removed: [] },
            { added: 5 },
            null,
          ]),
        }),
    ],
    [
      1,
      () =>
        tell('workspace/didChangeWatchedFiles', {
          changes: random.pick<unknown>([
            [],
            [{ uri: random.pick(uris), type: random.below(5) }],
            [{}],
            null,
          ]),
        }),
    ],
    [
      1,
      () => tell('textDocument/didSave', { textDocument: { uri: random.pick([...uris, ...unknownUris]) } }),
    ],
    [1, () => tell(random.pick(['$/nothing', 'nothing', 'workspace/nothing']), mangled({ any: 1 }, random))],
  ]
  const total = doSomething.reduce((sum, [weight]) => sum + weight, 0)
  const act = (): void => {
    let left = random.next() * total
    for (const [weight, what] of doSomething) {
      left -= weight
      if (left >= 0) continue
      what()
      return
    }
  }

  for (step = 1; step <= steps && !server.ended(); step++) {
    act()
    if (step % 25 === 0) await within(patience, Promise.race([...running.keys(), immediately()]))
    if (step % 200 === 0 || step === steps) await look()
  }
  for (const words of client.log) if (/^check \S+ failed/.test(words)) fault(words)
  if (server.ended()) fault(`the server ended ${server.ended()}`)
  else if (among) for (const uri of open.keys()) tell('textDocument/didClose', { textDocument: { uri } })
  else await server.stop()
  return faults

  async function look(): Promise<void> {
    // One that waits for news is answered by them.
    tell('workspace/didChangeConfiguration', { settings: { shaftwright: { findings: { delay: 0 } } } })
    const whole = await within(patience, Promise.all(running.keys()))
    if (!whole) {
      fault(`no answer to ${[...running.values()].join(', ')}`)
      return among ? undefined : await server.kill()
    }
    const truth = await fresh(open)
    for (const [uri, file] of open) {
      const expected = truth.get(uri) ?? []
      const found = await eventually(server, { uri, version: file.version, pulls, expected })
      if (found !== undefined)
        fault(
          `${uri} at version ${file.version}: found ${brief(found)} where a fresh server finds ${brief(expected)}`,
        )
      file.known = await knownOf(server, uri, expected).catch((error: unknown) => {
        fault(`${uri}: ${client.log.at(-1) ?? error}`)
        return nothingKnown
      })
    }
  }
}

/** What a server that has just started finds in the same texts. */
async function fresh(open: ReadonlyMap<string, Open>): Promise<ReadonlyMap<string, readonly Diagnostic[]>> {
  const server = await serve({ params: { capabilities: { textDocument: { diagnostic: {} } } } })
  for (const [uri, { text, version }] of open) server.client.open(uri, text, version)
  const found = new Map<string, readonly Diagnostic[]>()
  for (const uri of open.keys()) found.set(uri, await pulled(server, uri))
  await server.stop()
  return found
}

async function pulled({ client }: Served, uri: string): Promise<readonly Diagnostic[]> {
  const report: DocumentDiagnosticReport = await client.connection.sendRequest('textDocument/diagnostic', {
    textDocument: { uri },
  })
  return report.kind === 'full' ? report.items : []
}

/** Undefined once the server tells what was expected; what it tells instead when it never does. */
async function eventually(
  server: Served,
  {
    uri,
    version,
    pulls,
    expected,
  }: { uri: string; version: number; pulls: boolean; expected: readonly Diagnostic[] },
): Promise<readonly Diagnostic[] | undefined> {
  if (!pulls) {
    let last: readonly Diagnostic[] = []
    const right = server.client.published(uri, (told) => {
      last = told.diagnostics
      return told.version === version && isDeepStrictEqual(told.diagnostics, expected)
    })
    return (await within(5000, right)) ? undefined : last
  }
  let found: readonly Diagnostic[] = []
  for (let tries = 0; tries < 20; tries++) {
    found = await pulled(server, uri)
    if (isDeepStrictEqual(found, expected)) return undefined
    await new Promise((done) => setTimeout(done, 100))
  }
  return found
}

async function knownOf({ client }: Served, uri: string, diagnostics: readonly Diagnostic[]): Promise<Known> {
  const textDocument = { uri }
  const tokens: { resultId?: string } | null = await client.connection.sendRequest(
    'textDocument/semanticTokens/full',
    { textDocument },
  )
  const items: unknown[] | null = await client.connection.sendRequest('textDocument/prepareTypeHierarchy', {
    textDocument,
    position: { line: 0, character: 0 },
  })
  return { diagnostics, resultId: tokens?.resultId, items: items ?? [] }
}

const brief = (diagnostics: readonly Diagnostic[]): string =>
  JSON.stringify(
    diagnostics.map(
      ({ code, range: { start }, message }) => `${start.line + 1} ${code}: ${String(message).slice(0, 80)}`,
    ),
  ).slice(0, 2000)

const immediately = (): Promise<void> => new Promise<void>((done) => setImmediate(done))
