import {
  type Connection,
  DidChangeWatchedFilesNotification,
  ErrorCodes,
  type InitializeParams,
  PositionEncodingKind,
  ResponseError,
  TextDocumentSyncKind,
} from 'vscode-languageserver'
import { allChecks } from '../checks/index.ts'
import { Checker } from '../checks/run.ts'
import { toDiagnostics } from './diagnostics.ts'
import type { Asked, Feature } from './feature.ts'
import { guards, type Phase, refusal, wordsOf } from './guard.ts'
import type { Host } from './host.ts'
import { keyOf } from './uri.ts'
import { type OpenFile, Workspace } from './workspace.ts'

/** Serves job files over a connection until it closes. */
export function startServer(connection: Connection, host: Host, features: readonly Feature[]): void {
  const workspace = new Workspace(host.read, host.list)
  const checker = new Checker(workspace.analysis, allChecks)
  const log = (words: string) => connection.console.error(words)
  let phase: Phase = 'new'
  const guard = guards(log, () => phase)
  let client: InitializeParams['capabilities'] = {}
  let docs = host.docs

  /** What each open file was last told, as text. */
  const told = new Map<string, string>()
  const publishOne = guard.told('textDocument/publishDiagnostics', (open: OpenFile) => {
    const findings = checker.check(workspace.link(open), {
      today: host.today(),
      onFault: (check, error) => log(`check ${check} failed: ${wordsOf(error)}`),
    })
    const diagnostics = toDiagnostics(findings, { workspace, open, docs })
    const { uri, version } = open
    const params = { uri, ...(version !== undefined && { version }), diagnostics }
    const text = JSON.stringify(params)
    if (told.get(keyOf(uri)) === text) return undefined
    told.set(keyOf(uri), text)
    return connection.sendDiagnostics(params)
  })
  const publish = (files: readonly OpenFile[]): void => {
    for (const open of files) void publishOne(open)
  }
  const publishAll = () => publish(workspace.openFiles)

  connection.onInitialize((params) => {
    if (phase !== 'new')
      return new ResponseError<never>(ErrorCodes.InvalidRequest, 'initialize is asked once, and first.')
    client = params.capabilities
    docs = baseOf(params.initializationOptions) ?? host.docs
    const folders = params.workspaceFolders?.map(({ uri }) => uri) ?? (params.rootUri ? [params.rootUri] : [])
    workspace.setFolders({ added: folders })
    phase = 'running'
    return {
      serverInfo: { name: 'shaftwright' },
      capabilities: Object.assign(
        {
          positionEncoding: PositionEncodingKind.UTF16,
          textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: true },
          workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
        },
        ...features.map(({ capability }) => capability),
      ),
    }
  })

  connection.onShutdown(() => {
    const refused = refusal(phase)
    phase = refused ? phase : 'shut down'
    return refused
  })
  connection.onInitialized(
    guard.told('initialized', async () => {
      if (client.workspace?.workspaceFolders)
        connection.workspace.onDidChangeWorkspaceFolders(
          guard.told('workspace/didChangeWorkspaceFolders', ({ added, removed }) => {
            const uris = (folders: readonly { uri: string }[]) => folders.map(({ uri }) => uri)
            workspace.setFolders({ added: uris(added), removed: uris(removed) })
            publishAll()
          }),
        )
      if (client.workspace?.didChangeWatchedFiles?.dynamicRegistration)
        await connection.client.register(DidChangeWatchedFilesNotification.type, {
          watchers: [{ globPattern: '**/*.wright' }],
        })
    }),
  )

  connection.onDidOpenTextDocument(
    guard.told('textDocument/didOpen', ({ textDocument: { uri, version, text } }) => {
      workspace.open(uri, version, text)
      publishAll()
    }),
  )
  connection.onDidChangeTextDocument(
    guard.told('textDocument/didChange', ({ textDocument: { uri, version }, contentChanges }) => {
      const refused = workspace.change(uri, version, contentChanges)
      if (refused) connection.console.warn(`textDocument/didChange: ${uri} ${refused}`)
      else publish(workspace.touchedBy(uri))
    }),
  )
  connection.onDidCloseTextDocument(
    guard.told('textDocument/didClose', ({ textDocument: { uri } }) => {
      workspace.close(uri)
      told.delete(keyOf(uri))
      void connection.sendDiagnostics({ uri, diagnostics: [] })
      publishAll()
    }),
  )
  const lookAgain = () => {
    workspace.refresh()
    publishAll()
  }
  connection.onDidSaveTextDocument(guard.told('textDocument/didSave', lookAgain))
  connection.onDidChangeWatchedFiles(guard.told('workspace/didChangeWatchedFiles', lookAgain))

  for (const { method, answer } of features)
    connection.onRequest(
      method,
      guard.asked(method, (params: { readonly textDocument: { readonly uri: string } }) => {
        const open = workspace.get(params.textDocument.uri)
        return open ? answer({ params, workspace, open } as unknown as Asked<never>) : null
      }),
    )

  connection.onRequest(
    (method) =>
      refusal(phase) ?? new ResponseError(ErrorCodes.MethodNotFound, `${method} is not known here.`),
  )

  connection.listen()
}

/** The base of the check pages, where the client names one. */
function baseOf(options: unknown): string | undefined {
  const docs = typeof options === 'object' && options !== null && 'docs' in options ? options.docs : undefined
  return typeof docs === 'string' && docs !== '' ? docs.replace(/\/*$/, '/') : undefined
}
