import {
  type ClientCapabilities,
  type Connection,
  type Diagnostic,
  DocumentDiagnosticRequest,
  type ServerCapabilities,
  WorkspaceDiagnosticRequest,
} from 'vscode-languageserver'
import type { Finding } from '../../checks/check.ts'
import { isRevision } from '../../host/revision.ts'
import { keyOf } from '../../host/uri.ts'
import { equal } from '../../store/equal.ts'
import { type Guards, wordsOf } from '../transport/guard.ts'
import { whenQuiet } from '../transport/quiet.ts'
import type { Change, OpenFile, Workspace } from '../workspace/workspace.ts'
import { toDiagnostics } from './diagnostics.ts'
import { Pulled } from './pulled.ts'
import { Shown } from './shown.ts'

interface DiagnosticsServices {
  readonly workspace: Workspace
  readonly guard: Guards
  readonly log: (words: string) => void
  readonly find: (open: OpenFile) => readonly Finding[]
  readonly today: () => string
  /** Where the pages of the checks stand. */
  readonly docs: () => string | undefined
  readonly client: () => ClientCapabilities
  /** Milliseconds that what is new on the line being written waits. */
  readonly delay: () => number
  /** Whether the editor tells when a file on disk is another. */
  readonly watches: () => boolean
  /** To be called when what is known of open files may be another though their own text is not. */
  readonly others: () => void
  /** Told when files are others, or what is known of them; without any, when all may be. */
  readonly touched: (uris?: readonly string[]) => void
}

interface Published {
  readonly uri: string
  readonly version?: number
  readonly diagnostics: Diagnostic[]
}

/** Findings on their way to the editor: told to one that does not ask, and answered to one that does. */
export function diagnosticsFor(connection: Connection, parts: DiagnosticsServices) {
  const { workspace, guard } = parts
  const asks = () => parts.client().textDocument?.diagnostic !== undefined
  const canAskAgain = () => parts.client().workspace?.diagnostics?.refreshSupport === true

  const find = (open: OpenFile) => toDiagnostics(parts.find(open), { workspace, open, docs: parts.docs() })
  const shown = new Shown({
    find,
    // One that asks has to be told when to ask for what has waited.
    delay: () => (asks() && !canAskAgain() ? 0 : parts.delay()),
    more: ({ uri }) => changed([uri]),
  })
  const pulled = new Pulled({
    workspace,
    find: (open) => (workspace.get(open.uri) ? shown.of(open) : find(open)),
    watches: parts.watches,
    today: parts.today,
    onFault: (uri, error) => parts.log(`workspace/diagnostic failed at ${uri}: ${wordsOf(error)}`),
  })

  /** What each open file was last told. */
  const publishedFor = new Map<string, Published>()
  const publish = guard.own('textDocument/publishDiagnostics', (open: OpenFile) => {
    if (isRevision(open.uri)) return undefined
    // What a file uses and is still to come brings it here again.
    if (workspace.whole(open)) return undefined
    const { uri, version } = open
    const published = { uri, ...(version !== undefined && { version }), diagnostics: [...shown.of(open)] }
    const before = publishedFor.get(keyOf(uri))
    publishedFor.set(keyOf(uri), published)
    return equal(before, published) ? undefined : connection.sendDiagnostics(published)
  })
  const askAgain = guard.own('workspace/diagnostic/refresh', () => connection.languages.diagnostics.refresh())

  /** Keys of the open files that are to be looked at, and whether only their own text is another. */
  const due = new Map<string, 'own' | 'more'>()
  const ring = whenQuiet(() => {
    const files = [...due]
    due.clear()
    const byOthers = files.some(([, why]) => why === 'more')
    if (byOthers) parts.others()
    if (asks()) {
      if (canAskAgain() && byOthers) void askAgain(undefined)
      return
    }
    for (const [key] of files) {
      const open = workspace.get(key)
      if (open) void publish(open)
    }
  })
  const look = (files: readonly OpenFile[], own?: string) => {
    for (const { uri } of files) {
      const key = keyOf(uri)
      if (key !== own || !due.has(key)) due.set(key, key === own ? 'own' : 'more')
    }
    if (files.length > 0) ring()
  }

  const touched = (uris?: readonly string[]): void => {
    pulled.changed(uris)
    parts.touched(uris)
  }
  /** To be told when files are others, or what is known of them; without any, when all may be. */
  const changed = (uris?: readonly string[]): void => {
    touched(uris)
    look(uris ? workspace.touchedBy(uris) : workspace.openFiles)
  }
  workspace.onText = (uri) => changed([uri])
  workspace.onListed = (uris) => changed(workspace.refresh(uris))
  /** To be told of a text that the editor itself has changed, for which it asks by itself. */
  const opened = (uri: string): void => {
    touched([uri])
    look(workspace.touchedBy([uri]), keyOf(uri))
  }

  connection.languages.diagnostics.on(
    guard.request(DocumentDiagnosticRequest.method, (params) => pulled.document(params)),
  )
  connection.languages.diagnostics.onWorkspace(
    guard.request(WorkspaceDiagnosticRequest.method, (params, token, progress, each) =>
      pulled.workspace(params, token, progress, each),
    ),
  )

  const capability: ServerCapabilities = {
    diagnosticProvider: { interFileDependencies: true, workspaceDiagnostics: true, workDoneProgress: true },
  }
  return {
    capability,
    changed,
    opened,
    edited: (uri: string, changes: readonly Change[]): void => {
      shown.edited(uri, changes)
      opened(uri)
    },
    closed: (uri: string): void => {
      shown.closed(uri)
      publishedFor.delete(keyOf(uri))
      if (!asks()) void connection.sendDiagnostics({ uri, diagnostics: [] })
      changed([uri])
    },
  }
}
