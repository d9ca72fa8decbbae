import { type ChildProcess, fork, spawn } from 'node:child_process'
import { once } from 'node:events'
import { resolve } from 'node:path'
import { PassThrough } from 'node:stream'
import {
  type Connection,
  createConnection,
  createProtocolConnection,
  type Diagnostic,
  type DocumentUri,
  type InitializeResult,
  IPCMessageReader,
  IPCMessageWriter,
  LogMessageNotification,
  type MessageReader,
  type MessageWriter,
  ProposedFeatures,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node'
import { features } from '../../server/src/editor/features.ts'
import { startServer } from '../../server/src/editor/server.ts'
import type { Host } from '../../server/src/host/host.ts'

const main = resolve(import.meta.dirname, '../../server/src/editor/main-node.ts')

/** An editor as far as the server can see. */
export interface Client {
  readonly connection: ProtocolConnection
  readonly initialized: InitializeResult
  readonly log: readonly string[]
  /** The next publication for a file, or the one already there. */
  readonly published: (
    uri: DocumentUri,
    holds?: (params: PublishDiagnosticsParams) => boolean,
  ) => Promise<PublishDiagnosticsParams>
  /** Whether anything was published for a file. */
  readonly toldOf: (uri: DocumentUri) => boolean
  readonly open: (uri: DocumentUri, text: string, version?: number) => void
}

export const codes = (diagnostics: readonly Diagnostic[]): string[] =>
  diagnostics.map(({ code }) => String(code))

/** A message as it goes over the wire. */
export function frame(content: unknown): string {
  const body = typeof content === 'string' ? content : JSON.stringify(content)
  return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`
}

/** Shakes hands over a connection, and keeps what the server tells by itself. */
export async function initialize(connection: ProtocolConnection, params: object = {}): Promise<Client> {
  const last = new Map<DocumentUri, PublishDiagnosticsParams>()
  const waiting = new Set<() => void>()
  const log: string[] = []
  connection.onNotification(PublishDiagnosticsNotification.type, (published) => {
    last.set(published.uri, published)
    for (const look of waiting) look()
  })
  connection.onNotification(LogMessageNotification.type, ({ message }) => void log.push(message))
  connection.listen()
  const initialized = await connection.sendRequest<InitializeResult>('initialize', {
    processId: null,
    rootUri: null,
    capabilities: {},
    ...params,
  })
  await connection.sendNotification('initialized', {})
  const published: Client['published'] = (uri, holds = () => true) => {
    const { promise, resolve: done } = Promise.withResolvers<PublishDiagnosticsParams>()
    const look = () => {
      const params = last.get(uri)
      if (!params || !holds(params)) return
      waiting.delete(look)
      done(params)
    }
    waiting.add(look)
    look()
    return promise
  }
  const open: Client['open'] = (uri, text, version = 1) =>
    void connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'shaftwright', version, text },
    })
  const toldOf = (uri: DocumentUri) => last.has(uri)
  return { connection, initialized, log, published, toldOf, open }
}

interface Served {
  readonly client: Client
  /** Writes bytes to the server beside the connection: several messages that arrive as one. */
  readonly write: (bytes: string) => void
  readonly stop: () => Promise<number | null>
}

type Prepare = (connection: ProtocolConnection) => void

/** The server in a process of its own, over its standard input and output. `prepare` sets up what the editor answers. */
export function startProcess(params: object = {}, prepare?: Prepare): Promise<Served> {
  const child = spawn(process.execPath, [main, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] })
  const streams = [new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin)] as const
  return serveBy(child, streams, params, prepare)
}

/** The server in this process, on a disk or whatever stands for one. */
export async function startHere(
  host: Host | ((connection: Connection) => Host),
  params: object = {},
  prepare: Prepare = () => {},
): Promise<Client> {
  const [up, down] = [new PassThrough(), new PassThrough()]
  const server = createConnection(
    ProposedFeatures.all,
    new StreamMessageReader(up),
    new StreamMessageWriter(down),
  )
  startServer(server, typeof host === 'function' ? host(server) : host, features)
  const connection = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up))
  prepare(connection)
  return initialize(connection, params)
}

/** The same over the channel between a process and its child. */
export function startOverIpc(params: object = {}): Promise<Served> {
  const child = fork(main, ['--node-ipc'])
  return serveBy(child, [new IPCMessageReader(child), new IPCMessageWriter(child)], params)
}

async function serveBy(
  child: ChildProcess,
  [reader, writer]: readonly [MessageReader, MessageWriter],
  params: object,
  prepare: Prepare = () => {},
): Promise<Served> {
  const connection = createProtocolConnection(reader, writer)
  prepare(connection)
  const client = await initialize(connection, params)
  const stop = async () => {
    const exited = once(child, 'exit')
    await connection.sendRequest('shutdown')
    await connection.sendNotification('exit')
    const [code] = await exited
    connection.dispose()
    return code as number | null
  }
  return { client, write: (bytes) => void child.stdin?.write(bytes), stop }
}
