import { existsSync } from 'node:fs'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { parseArgs } from 'node:util'
import { setFlagsFromString } from 'node:v8'
import {
  type Connection,
  createConnection,
  createServerPipeTransport,
  createServerSocketTransport,
  ErrorCodes,
  IPCMessageReader,
  IPCMessageWriter,
  type Message,
  type MessageReader,
  type MessageWriter,
  ProposedFeatures,
  StreamMessageWriter,
} from 'vscode-languageserver/node'
import type { FileRead, Host, UnreadFolder } from '../host/host.ts'
import { listInside, readInside, stampOf } from '../host/machine-node.ts'
import { today } from '../host/today.ts'
import { features } from './features.ts'
import { startServer } from './server.ts'
import { clientFiles } from './transport/client-files.ts'
import { exitLast } from './transport/exit-last-node.ts'
import { FramedReader } from './transport/framed-reader-node.ts'
import { keptJson } from './transport/kept-json-node.ts'

function read(uri: string, root: string): FileRead {
  try {
    return readInside(fileURLToPath(root), fileURLToPath(uri))
  } catch {
    return undefined // no URI of a file
  }
}

function stamp(uri: string): string | undefined {
  try {
    return stampOf(fileURLToPath(uri))
  } catch {
    return undefined
  }
}

const uriOfPath = (path: string): string => pathToFileURL(path).href

async function list(root: string, unread: UnreadFolder): Promise<readonly string[]> {
  return (await listInside(fileURLToPath(root), (folder, why) => unread(uriOfPath(folder), why))).map(
    uriOfPath,
  )
}

/** Files on the disk are read there; those elsewhere (a repository that was not cloned) the editor reads. */
function files(connection: Connection): Pick<Host, 'read' | 'list'> {
  const client = clientFiles(connection)
  return {
    read: (uri, root) => (root.startsWith('file:') ? read(uri, root) : client.read(uri, root)),
    list: (root, unread) => (root.startsWith('file:') ? list(root, unread) : client.list(root, unread)),
  }
}

type Transport = readonly [MessageReader, MessageWriter]

function overStdio(): Transport {
  const { stdin, stdout, stderr } = process
  // Standard output belongs to the protocol.
  globalThis.console = new console.Console(stderr)
  const reader = new FramedReader(stdin, (words) => {
    stderr.write(`The language server cannot follow its input: ${words}.\n`)
    process.exit(1)
  })
  const writer = new StreamMessageWriter(stdout, { contentTypeEncoder: keptJson })
  reader.onError(({ name, message }) => {
    const code = name === 'SyntaxError' ? ErrorCodes.ParseError : ErrorCodes.InvalidRequest
    const answer = { jsonrpc: '2.0', id: null, error: { code, message } }
    void writer.write(answer as Message)
  })
  return [reader, writer]
}

/** What the command line names, as LSP 3.17 (Implementation considerations) has it. */
function transport(): Transport | undefined {
  const { values } = parseArgs({
    strict: false,
    options: {
      stdio: { type: 'boolean' },
      'node-ipc': { type: 'boolean' },
      pipe: { type: 'string' },
      socket: { type: 'string' },
    },
  })
  if (values['node-ipc'] && process.send)
    return [new IPCMessageReader(process), new IPCMessageWriter(process)]
  if (values.stdio) return overStdio()
  if (typeof values.pipe === 'string') return createServerPipeTransport(values.pipe)
  return typeof values.socket === 'string' ? createServerSocketTransport(Number(values.socket)) : undefined
}

/** Serves the language over what the command line names: `--stdio`, `--node-ipc`, `--pipe=NAME` or `--socket=PORT`. */
export function serve(): void {
  // What is alive is small: collecting again once it has grown by this much holds half the memory and costs little (docs/performance.md).
  setFlagsFromString('--heap-growing-percent=40')
  const docs = new URL('../docs/checks/', import.meta.url)
  const streams = transport()
  if (!streams) {
    console.error('Start the language server with --stdio, --node-ipc, --pipe=NAME or --socket=PORT.')
    process.exitCode = 2
    return
  }
  exitLast(...streams)
  const connection = createConnection(ProposedFeatures.all, ...streams)
  const host = { ...files(connection), stamp, today, ...(existsSync(docs) && { docs: docs.href }) }
  startServer(connection, host, features)
}
