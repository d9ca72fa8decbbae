import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { resolve } from 'node:path'
import {
  createProtocolConnection,
  type ProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node'
import { type Client, initialize } from '../editor/client.ts'

/** The server as it stands in the source. */
const fromSource = resolve(import.meta.dirname, '../../server/src/editor/main-node.ts')

/** What a process holds once everything that nothing needs is thrown away, in bytes. */
export interface Memory {
  readonly heap: number
  readonly resident: number
  /** The most that was ever resident. */
  readonly peak: number
  /** Milliseconds of computing so far. */
  readonly computed: number
}

export interface Served {
  readonly client: Client
  /** How it ended, where it has. */
  readonly ended: () => string | undefined
  readonly memory: () => Promise<Memory>
  /** Writes what is no message; only while no message is on its way. */
  readonly write: (bytes: string) => void
  readonly stop: () => Promise<void>
  readonly kill: () => Promise<void>
}

interface Options {
  readonly main?: string
  /** For Node. */
  readonly flags?: readonly string[]
  readonly params?: object
  /** Sets up what the editor answers. */
  readonly prepare?: (connection: ProtocolConnection) => void
}

/** Asked over a channel beside the protocol, answers what the process holds. */
const witness = `data:text/javascript,${encodeURIComponent(
  "process.on('message', () => { gc(); gc(); const { heapUsed, rss } = process.memoryUsage(); process.send({ heap: heapUsed, resident: rss, peak: process.resourceUsage().maxRSS * 1024, computed: process.cpuUsage().user / 1e3 + process.cpuUsage().system / 1e3 }) }); process.channel.unref()",
)}`

/** The server over its standard input and output, in a process that can be asked what it holds. */
export async function serve({
  main = fromSource,
  flags = [],
  params = {},
  prepare,
}: Options = {}): Promise<Served> {
  const child = spawn(process.execPath, [...flags, '--expose-gc', '--import', witness, main, '--stdio'], {
    stdio: ['pipe', 'pipe', 'inherit', 'ipc'],
  })
  const { stdin, stdout } = child
  if (!stdin || !stdout) throw new Error('the server has no standard input or output')
  let ended: string | undefined
  child.once('exit', (code, signal) => {
    ended = `with ${signal ?? code}`
  })
  stdin.on('error', () => {}) // it has ended: `ended` tells
  const connection = createProtocolConnection(new StreamMessageReader(stdout), new StreamMessageWriter(stdin))
  prepare?.(connection)
  return {
    client: await initialize(connection, params),
    ended: () => ended,
    memory: async () => {
      child.send('tell')
      const [told] = await once(child, 'message')
      return told as Memory
    },
    write: (bytes) => void stdin.write(bytes),
    stop: async () => {
      const exited = once(child, 'exit')
      await connection.sendRequest('shutdown')
      await connection.sendNotification('exit')
      await exited
      connection.dispose()
    },
    kill: async () => {
      const exited = once(child, 'exit')
      child.kill('SIGKILL')
      await exited
      connection.dispose()
    },
  }
}
