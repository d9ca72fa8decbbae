import {
  type ClientCapabilities,
  CodeLensRefreshRequest,
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  DidChangeWorkspaceFoldersNotification,
  DidCreateFilesNotification,
  DidDeleteFilesNotification,
  DidRenameFilesNotification,
  ErrorCodes,
  FileChangeType,
  PositionEncodingKind,
  type RegistrationParams,
  RegistrationRequest,
  ResponseError,
  type ServerCapabilities,
  TextDocumentSyncKind,
  WatchKind,
} from 'vscode-languageserver'
import { allChecks } from '../areas/index.ts'
import { Checker } from '../checks/run.ts'
import type { Host } from '../host/host.ts'
import { type PlanChangedParams, planChanged } from './client-requests.ts'
import { diagnosticsFor } from './diagnostics/diagnostics-feature.ts'
import type { Feature, TextRequestContext } from './feature.ts'
import { jobsAndFolders } from './rename/file-renames-feature.ts'
import { bareSettings, readSettings } from './settings.ts'
import { guards, type Phase, refusal, wordsOf } from './transport/guard.ts'
import { malformed } from './transport/malformed.ts'
import { workProgress } from './transport/work-progress.ts'
import { version } from './version.ts'
import { Followed } from './workspace/followed.ts'
import { type OpenFile, Workspace } from './workspace/workspace.ts'

/** What of the params of any request is looked at here. */
interface AnyParams {
  readonly textDocument: { readonly uri: string }
  readonly workDoneToken?: unknown
}

/** Serves job files over a connection until it closes. */
export function startServer(connection: Connection, host: Host, features: readonly Feature[]): void {
  const workspace = new Workspace(host.read, host.list, host.stamp)
  const checker = new Checker(workspace.analysis, allChecks)
  const log = (words: string) => connection.console.error(words)
  let phase: Phase = 'new'
  const guard = guards(log, () => phase)
  let client: ClientCapabilities = {}
  let docs = host.docs
  let settings = bareSettings
  /** Whether the editor tells when a file on disk is another. */
  let watches = false

  const findingsOf = (open: OpenFile) =>
    checker.check(workspace.link(open), {
      today: host.today(),
      onFault: (check, error) => log(`check ${check} failed: ${wordsOf(error)}`),
    })
  const notifyPlans = guard.own(planChanged, (uris: readonly string[]) => {
    const params: PlanChangedParams = { uris }
    return connection.sendNotification(planChanged, params)
  })
  workspace.onUnread = (uri, why) =>
    connection.console.warn(`${uri} cannot be read: ${why}. The job files in it are not checked.`)
  const followed = new Followed(workspace, (uris) => void notifyPlans(uris))
  const diagnostics = diagnosticsFor(connection, {
    workspace,
    guard,
    log,
    find: findingsOf,
    today: host.today,
    docs: () => docs,
    client: () => client,
    delay: () => settings.findings.delay,
    watches: () => watches,
    others: () => void refreshViews(undefined),
    touched: (uris) => followed.changed(uris),
  })

  type Folders = readonly { readonly uri: string }[]
  const setFolders = (added: Folders, removed: Folders = []) => {
    const uris = (folders: Folders) => folders.map(({ uri }) => uri)
    for (const uri of workspace.setFolders({ added: uris(added), removed: uris(removed) }))
      connection.console.warn(
        `${uri} is a whole disk, so it is not searched for job files. Open the folder that holds them.`,
      )
  }

  connection.onInitialize((params) => {
    if (phase !== 'new')
      return new ResponseError<never>(ErrorCodes.InvalidRequest, 'initialize must come first, and only once.')
    const wrong = malformed('initialize', params)
    if (wrong !== undefined) return new ResponseError<never>(ErrorCodes.InvalidParams, wrong)
    client = params.capabilities
    docs = baseOf(params.initializationOptions) ?? host.docs
    setFolders(params.workspaceFolders ?? (params.rootUri ? [{ uri: params.rootUri }] : []))
    phase = 'running'
    return {
      serverInfo: { name: 'shaftwright', version },
      capabilities: joined([
        {
          positionEncoding: PositionEncodingKind.UTF16,
          textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: true },
          workspace: {
            workspaceFolders: { supported: true, changeNotifications: true },
            fileOperations: {
              didCreate: jobsAndFolders,
              didRename: jobsAndFolders,
              didDelete: jobsAndFolders,
            },
          },
        },
        diagnostics.capability,
        ...features.map(({ capability: can }) => (typeof can === 'function' ? can(client) : can)),
      ]),
    }
  })

  connection.onShutdown(() => {
    const refused = refusal(phase)
    phase = refused ? phase : 'shut down'
    return refused
  })

  const refreshViews = guard.own('workspace/refresh', async () => {
    const { inlayHint, codeLens } = client.workspace ?? {}
    if (inlayHint?.refreshSupport) await connection.languages.inlayHint.refresh()
    if (codeLens?.refreshSupport) await connection.sendRequest(CodeLensRefreshRequest.type)
  })
  const lookAtSettings = async (given?: unknown): Promise<void> => {
    settings = readSettings(
      client.workspace?.configuration ? await connection.workspace.getConfiguration('shaftwright') : given,
    )
    diagnostics.changed()
  }
  connection.onDidChangeConfiguration(
    guard.notification('workspace/didChangeConfiguration', (params) =>
      lookAtSettings(params.settings?.shaftwright),
    ),
  )

  const firstSettings = guard.own('workspace/configuration', () =>
    client.workspace?.configuration ? lookAtSettings() : undefined,
  )
  const register = guard.own('client/registerCapability', async () => {
    const registrations = registrationsFor(client)
    if (registrations.length > 0) await connection.sendRequest(RegistrationRequest.type, { registrations })
    watches = client.workspace?.didChangeWatchedFiles?.dynamicRegistration === true
    if (watches) workspace.isWatched()
  })

  connection.onInitialized(
    guard.notification('initialized', async () => {
      // Here, since the library puts a handler of its own in the place before.
      connection.onNotification(
        DidChangeWorkspaceFoldersNotification.type,
        guard.notification('workspace/didChangeWorkspaceFolders', async ({ event: { added, removed } }) => {
          setFolders(added, removed)
          diagnostics.changed()
          await workspace.list()
        }),
      )
      // None waits for another, or is lost with it.
      await Promise.all([register(undefined), firstSettings(undefined), workspace.list()])
    }),
  )

  /** An editor that does not watch the disk gives its chances to look at it. */
  const lookAtDisk = () => {
    if (watches) return
    workspace.refresh()
    diagnostics.changed()
  }
  connection.onDidOpenTextDocument(
    guard.notification('textDocument/didOpen', ({ textDocument: { uri, version, text } }) => {
      workspace.open(uri, version, text)
      diagnostics.opened(uri)
      lookAtDisk()
    }),
  )
  connection.onDidChangeTextDocument(
    guard.notification('textDocument/didChange', ({ textDocument: { uri, version }, contentChanges }) => {
      const refused = workspace.change(uri, version, contentChanges)
      if (refused) connection.console.warn(`textDocument/didChange: ${uri} ${refused}`)
      else diagnostics.edited(uri, contentChanges)
    }),
  )
  connection.onDidCloseTextDocument(
    guard.notification('textDocument/didClose', ({ textDocument: { uri } }) => {
      workspace.close(uri)
      diagnostics.closed(uri)
      lookAtDisk()
    }),
  )
  connection.onDidSaveTextDocument(guard.notification('textDocument/didSave', lookAtDisk))
  /** Files or folders have changed on disk, or have come or gone: what else is in their folders then, only a new list can tell. */
  const lookAt = (uris: readonly string[]) => diagnostics.changed(workspace.refresh(uris))
  const lookAround = async (uris: readonly string[]): Promise<void> => {
    lookAt(uris)
    if (uris.some((uri) => workspace.isSearched(uri))) await workspace.list()
  }
  connection.onDidChangeWatchedFiles(
    guard.notification('workspace/didChangeWatchedFiles', async ({ changes }) => {
      const uris = changes.map(({ uri }) => uri)
      if (changes.some(({ type }) => type !== FileChangeType.Changed)) await lookAround(uris)
      else lookAt(uris)
    }),
  )
  const uriOfEach = (files: readonly { readonly uri: string }[]) => files.map(({ uri }) => uri)
  connection.onNotification(
    DidCreateFilesNotification.type,
    guard.notification('workspace/didCreateFiles', ({ files }) => lookAround(uriOfEach(files))),
  )
  connection.onNotification(
    DidDeleteFilesNotification.type,
    guard.notification('workspace/didDeleteFiles', ({ files }) => lookAround(uriOfEach(files))),
  )
  connection.onNotification(
    DidRenameFilesNotification.type,
    guard.notification('workspace/didRenameFiles', ({ files }) =>
      lookAround(files.flatMap(({ oldUri, newUri }) => [oldUri, newUri])),
    ),
  )

  for (const { method, of, answer } of features)
    connection.onRequest(
      method,
      guard.request(method, (params: AnyParams, token) => {
        const open = of === 'text' ? workspace.get(params.textDocument.uri) : undefined
        if (of === 'text' && !open) return null
        const work = workProgress(connection, {
          title: 'Searching job files',
          token: params.workDoneToken,
          shows: client.window?.workDoneProgress === true,
        })
        const asked = {
          params,
          workspace,
          settings,
          client,
          docs,
          token: {
            get isCancellationRequested() {
              return token.isCancellationRequested || work.isStopped()
            },
          },
          progress: work.report,
          findingsOf,
          follow: (uri: string, seen: OpenFile | undefined) => followed.follow(uri, seen),
          open,
          get today() {
            return host.today()
          },
        }
        const answered = answer(asked as unknown as TextRequestContext<never>)
        return answered instanceof Promise ? answered.finally(work.end) : answered
      }),
    )

  connection.onRequest(
    (method) => refusal(phase) ?? new ResponseError(ErrorCodes.MethodNotFound, `${method} is not supported.`),
  )

  connection.listen()
}

/** What features can, together: what each says of the workspace and of operations on files is beside what the others say of them. */
const joined = (capabilities: readonly ServerCapabilities[]): ServerCapabilities =>
  Object.assign({}, ...capabilities, {
    workspace: Object.assign({}, ...capabilities.map(({ workspace }) => workspace), {
      fileOperations: Object.assign({}, ...capabilities.map(({ workspace }) => workspace?.fileOperations)),
    }),
  })

/** What the editor is to tell of, where it can be asked to. */
function registrationsFor({ workspace }: ClientCapabilities): RegistrationParams['registrations'] {
  const wanted = [
    {
      method: DidChangeWatchedFilesNotification.method,
      can: workspace?.didChangeWatchedFiles,
      // For a deleted or renamed folder the editor reports only the folder, not its files, and its name can be anything.
      registerOptions: {
        watchers: [
          { globPattern: '**/*.wright', kind: WatchKind.Change },
          { globPattern: '**/*', kind: WatchKind.Create | WatchKind.Delete },
        ],
      },
    },
    {
      method: DidChangeConfigurationNotification.method,
      can: workspace?.didChangeConfiguration,
      registerOptions: { section: 'shaftwright' },
    },
  ]
  return wanted
    .filter(({ can }) => can?.dynamicRegistration)
    .map(({ method, registerOptions }) => ({ id: method, method, registerOptions }))
}

/** The base of the check pages, where the client names one. */
function baseOf(options: unknown): string | undefined {
  const docs = typeof options === 'object' && options !== null && 'docs' in options ? options.docs : undefined
  return typeof docs === 'string' && docs !== '' ? docs.replace(/\/*$/, '/') : undefined
}
