// An editor as far as the server can see, with one text open.

import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import {
  createProtocolConnection,
  type InitializeResult,
  type Position,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node'
import { nodeFlags } from '../../client/src/node-flags.ts'

const uri = 'file:///measured/job.wright'

/** One keystroke: a character put in at a place, or the one after it taken away. */
export interface Keystroke {
  readonly at: Position
  readonly text: string
}

export interface Session {
  readonly child: ChildProcess
  readonly connection: ProtocolConnection
  readonly offers: InitializeResult['capabilities']
  /** How many times findings were published so far. */
  readonly publications: () => number
  readonly open: (text: string) => Promise<void>
  /** Sends a keystroke without waiting; the promise is for its findings. */
  readonly type: (keystroke: Keystroke) => Promise<void>
  readonly ask: (method: string, params?: object) => Promise<unknown>
  readonly close: () => Promise<void>
}

const capabilities = {
  textDocument: {
    publishDiagnostics: { relatedInformation: true, versionSupport: true, codeDescriptionSupport: true },
    hover: { contentFormat: ['markdown', 'plaintext'] },
    completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown'] } },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    semanticTokens: {
      requests: { full: true },
      tokenTypes: ['namespace', 'type', 'class', 'property', 'variable', 'number', 'string', 'comment'],
      tokenModifiers: ['declaration'],
      formats: ['relative'],
    },
  },
}

/** Starts a server and returns once it is initialized. `pulls`: the editor asks for findings instead of being told. */
export async function startSession(
  command: readonly string[],
  { pulls = false }: { readonly pulls?: boolean } = {},
): Promise<Session> {
  const child = spawn(process.execPath, [...nodeFlags, ...command, '--stdio'], {
    stdio: ['pipe', 'pipe', 'inherit'],
  })
  const connection = createProtocolConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  )
  let version = 0
  let publications = 0
  const waiting = new Map<number, () => void>()
  connection.onNotification(PublishDiagnosticsNotification.type, (published) => {
    publications += 1
    for (const [wanted, done] of waiting)
      if (wanted <= (published.version ?? 0)) {
        waiting.delete(wanted)
        done()
      }
  })
  connection.onRequest('client/registerCapability', () => null)
  connection.listen()
  const textDocument = pulls ? { ...capabilities.textDocument, diagnostic: {} } : capabilities.textDocument
  const { capabilities: offers } = await connection.sendRequest<InitializeResult>('initialize', {
    processId: process.pid,
    rootUri: null,
    capabilities: { textDocument },
    initializationOptions: { docs: 'file:///measured/docs/checks/' },
  })
  await connection.sendNotification('initialized', {})

  const findings = (): Promise<void> => {
    const { promise, resolve } = Promise.withResolvers<void>()
    waiting.set(version, resolve)
    return promise
  }
  return {
    child,
    connection,
    offers,
    publications: () => publications,
    open: (text) => {
      version += 1
      void connection.sendNotification('textDocument/didOpen', {
        textDocument: { uri, languageId: 'shaftwright', version, text },
      })
      return findings()
    },
    type: ({ at, text }) => {
      version += 1
      const end = text === '' ? { line: at.line, character: at.character + 1 } : at
      void connection.sendNotification('textDocument/didChange', {
        textDocument: { uri, version },
        contentChanges: [{ range: { start: at, end }, text }],
      })
      return findings()
    },
    ask: (method, params = {}) => connection.sendRequest(method, { textDocument: { uri }, ...params }),
    close: async () => {
      const exited = once(child, 'exit')
      await connection.sendRequest('shutdown')
      await connection.sendNotification('exit')
      await exited
      connection.dispose()
    },
  }
}
