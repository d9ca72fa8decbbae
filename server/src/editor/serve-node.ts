import { existsSync } from 'node:fs'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { setFlagsFromString } from 'node:v8'
import {
  type Connection,
  createConnection,
  ErrorCodes,
  type Message,
  ProposedFeatures,
  StreamMessageWriter,
} from 'vscode-languageserver/node'
import { clientFiles } from './client-files.ts'
import { features } from './features.ts'
import { FramedReader } from './framed-reader-node.ts'
import type { Host } from './host.ts'
import { listInside, readInside } from './machine-node.ts'
import { startServer } from './server.ts'
import { today } from './today.ts'

function read(uri: string, root: string): string | undefined {
  try {
    return readInside(fileURLToPath(root), fileURLToPath(uri))
  } catch {
    return undefined // no URI of a file
  }
}

async function list(root: string): Promise<readonly string[]> {
  return (await listInside(fileURLToPath(root))).map((path) => pathToFileURL(path).href)
}

/** Files on the disk are read there; those elsewhere (a repository that was not cloned) the editor reads. */
function files(connection: Connection): Pick<Host, 'read' | 'list'> {
  const client = clientFiles(connection)
  return {
    read: (uri, root) => (root.startsWith('file:') ? read(uri, root) : client.read(uri, root)),
    list: (root) => (root.startsWith('file:') ? list(root) : client.list(root)),
  }
}

function overStdio(): Connection {
  const { stdin, stdout, stderr } = process
  // Standard output belongs to the protocol.
  globalThis.console = new console.Console(stderr)
  const reader = new FramedReader(stdin, (words) => {
    stderr.write(`The language server cannot follow its input: ${words}.\n`)
    process.exit(1)
  })
  const writer = new StreamMessageWriter(stdout)
  reader.onError(({ name, message }) => {
    const code = name === 'SyntaxError' ? ErrorCodes.ParseError : ErrorCodes.InvalidRequest
    const answer = { jsonrpc: '2.0', id: null, error: { code, message } }
    void writer.write(answer as Message)
  })
  return createConnection(ProposedFeatures.all, reader, writer)
}

/** Serves the language over what the command line names: `--stdio`, or the channel of a parent process. */
export function serve(): void {
  // What is alive is small: collecting again once it has grown by this much holds half the memory and costs little (docs/performance.md).
  setFlagsFromString('--heap-growing-percent=40')
  const docs = new URL('../docs/checks/', import.meta.url)
  const connection = process.argv.includes('--stdio') ? overStdio() : createConnection(ProposedFeatures.all)
  const host = { ...files(connection), today, ...(existsSync(docs) && { docs: docs.href }) }
  startServer(connection, host, features)
}
