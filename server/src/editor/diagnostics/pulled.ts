import type {
  CancellationToken,
  Diagnostic,
  DocumentDiagnosticParams,
  DocumentDiagnosticReport,
  PreviousResultId,
  ResultProgressReporter,
  WorkDoneProgressReporter,
  WorkspaceDiagnosticParams,
  WorkspaceDiagnosticReport,
  WorkspaceDiagnosticReportPartialResult,
  WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver'
import { isRevision } from '../../host/revision.ts'
import { keyOf } from '../../host/uri.ts'
import { equal } from '../../store/equal.ts'
import { cancelled } from '../transport/guard.ts'
import { pause } from '../transport/quiet.ts'
import { overlap } from '../workspace/overlap.ts'
import type { OpenFile, Workspace } from '../workspace/workspace.ts'

interface FileReport {
  readonly id: string
  readonly items: readonly Diagnostic[]
  /** Key of every file that decides what is found. */
  readonly keys: ReadonlySet<string>
}

interface PulledOptions {
  readonly workspace: Workspace
  /** What of a file is to be shown now. */
  readonly find: (open: OpenFile) => readonly Diagnostic[]
  /** Whether the editor tells when a file on disk is another. */
  readonly watches: () => boolean
  readonly today: () => string
  /** Told why a file could not be looked at. */
  readonly onFault: (uri: string, error: unknown) => void
}

type KnownResults = ReadonlyMap<string, PreviousResultId>
type SendReport = (report: WorkspaceDocumentDiagnosticReport) => void

/** Findings for editors that ask for them (LSP 3.17, Pull Diagnostics). */
export class Pulled {
  readonly #parts: PulledOptions
  /** The last report of each file. */
  readonly #reports = new Map<string, FileReport>()
  /** Files whose last report still holds. */
  readonly #current = new Set<string>()
  readonly #waiting = new Set<() => void>()
  /** No other server has given the same. */
  readonly #series = Math.random().toString(36).slice(2)
  #reported = 0
  #changes = 0
  #day = ''

  constructor(parts: PulledOptions) {
    this.#parts = parts
  }

  /** To be told when files are others now, or when any may be. */
  changed(uris?: readonly string[]): void {
    this.#changes += 1
    if (uris) {
      const changed = new Set(uris.map(keyOf))
      for (const key of this.#current)
        if (overlap(changed, this.#reports.get(key)?.keys ?? changed)) this.#current.delete(key)
    } else this.#current.clear()
    for (const wake of this.#waiting) wake()
    this.#waiting.clear()
  }

  async document({
    textDocument,
    previousResultId,
  }: DocumentDiagnosticParams): Promise<DocumentDiagnosticReport> {
    // An older revision cannot be fixed, so its faults are not reported.
    const report = isRevision(textDocument.uri) ? undefined : await this.#report(textDocument.uri)
    if (!report) return { kind: 'full', items: [] }
    const resultId = report.id
    if (resultId === previousResultId) return { kind: 'unchanged', resultId }
    return { kind: 'full', resultId, items: [...report.items] }
  }

  /** All job files. An editor that takes them one by one, and knows them all already, is answered when something has changed. */
  async workspace(
    { previousResultIds }: WorkspaceDiagnosticParams,
    token: CancellationToken,
    progress: WorkDoneProgressReporter,
    one: ResultProgressReporter<WorkspaceDiagnosticReportPartialResult> | undefined,
  ): Promise<WorkspaceDiagnosticReport> {
    const known = new Map(previousResultIds.map((result) => [keyOf(result.uri), result]))
    const items: WorkspaceDocumentDiagnosticReport[] = []
    const give: SendReport = one
      ? (report) => one.report({ items: [report] })
      : (report) => void items.push(report)
    progress.begin('Checking job files', 0, undefined, true)
    const percent = (done: number) => progress.report(done)
    let changes = this.#changes
    let news = await this.#walk(known, { token, percent, give }).finally(() => progress.done())
    while (one && !news && known.size > 0) {
      await this.#change(changes, token)
      changes = this.#changes
      const giveNew: SendReport = (report) => {
        if (report.kind === 'full') give(report)
      }
      news = await this.#walk(known, { token, percent: () => {}, give: giveNew })
    }
    return { items }
  }

  /** Gives a report of every job file, and tells whether one was other than the editor knows. */
  async #walk(
    known: KnownResults,
    { token, percent, give }: { token: CancellationToken; percent: (done: number) => void; give: SendReport },
  ): Promise<boolean> {
    if (!this.#parts.watches()) this.#current.clear()
    const uris = await this.#parts.workspace.list()
    let news = false
    for (const [done, uri] of uris.entries()) {
      if (!this.#current.has(keyOf(uri))) await pause()
      if (token.isCancellationRequested) throw cancelled()
      const report = await this.#report(uri).catch((error: unknown) => {
        this.#parts.onFault(uri, error)
        return undefined
      })
      percent(Math.floor(((done + 1) / uris.length) * 100))
      if (!report) continue
      const version = this.#parts.workspace.get(uri)?.version ?? null
      const resultId = report.id
      const same = known.get(keyOf(uri))?.value === resultId
      give(
        same
          ? { kind: 'unchanged', uri, version, resultId }
          : { kind: 'full', uri, version, resultId, items: [...report.items] },
      )
      news ||= !same
    }
    const there = new Set(uris.map(keyOf))
    for (const [key, { uri }] of known)
      if (!there.has(key) && !this.#parts.workspace.get(uri)) {
        give({ kind: 'full', uri, version: null, items: [] })
        news = true
      }
    return news
  }

  /** Resolves at the first change after so many. */
  async #change(changes: number, token: CancellationToken): Promise<void> {
    if (this.#changes !== changes) return
    await new Promise<void>((done) => {
      this.#waiting.add(done)
      token.onCancellationRequested(() => done())
    })
  }

  async #report(uri: string): Promise<FileReport | undefined> {
    const key = keyOf(uri)
    const { workspace, find, today } = this.#parts
    if (this.#day !== today()) this.#current.clear()
    this.#day = today()
    if (this.#current.has(key)) return this.#reports.get(key)
    const open = await workspace.wholeFile(uri)
    if (!open) return undefined
    // From here on nothing else happens until the report is made: it is of the text as it stands.
    const items = find(open)
    const before = this.#reports.get(key)
    const id = before && equal(before.items, items) ? before.id : `${this.#series}-${this.#reported++}`
    const report = { id, items, keys: workspace.keysOf(open) }
    this.#reports.set(key, report)
    this.#current.add(key)
    return report
  }
}
