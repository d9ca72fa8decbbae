// Shows the plan that the server works out, beside the job file: read-only, and made again when the job changes.
import {
  type Disposable,
  EventEmitter,
  type FileChangeEvent,
  FileChangeType,
  FileSystemError,
  type FileSystemProvider,
  FileType,
  Uri,
  ViewColumn,
  window,
  workspace,
} from 'vscode'
import type { BaseLanguageClient, ExecuteCommandMiddleware } from 'vscode-languageclient'
import {
  type PlanChangedParams,
  type PlanParams,
  type PlanResult,
  planChanged,
  planCommand,
  planRequest,
} from '../../server/src/editor/client-requests.ts'
import { type PlanPage, pageText } from './plan-page.ts'
import { type PlanSubject, planLocation, planScheme, subjectOf } from './plan-subject.ts'

export type PlanView = Disposable & {
  /** To be called before the client starts. */
  readonly connect: (client: BaseLanguageClient) => void
  /** The plan of the drive or the reading the cursor is in; `job`: in that file. */
  readonly showHere: (job?: Uri) => Promise<void>
  /** Shows the plan a lens leads to. */
  readonly whenExecuted: NonNullable<ExecuteCommandMiddleware['executeCommand']>
  readonly serverRuns: () => void
  readonly serverStopped: () => void
}

interface View {
  readonly uri: Uri
  readonly subject: PlanSubject
  page: PlanPage
  /** Grows with every page. */
  version: number
  /** Whether the job may have changed since the page was made. */
  due: boolean
  asking: boolean
}

const stopped = 'The language server has stopped.'

export const createPlanView = (): PlanView => {
  const views = new Map<string, View>()
  const changed = new EventEmitter<FileChangeEvent[]>()
  let client: BaseLanguageClient | undefined
  let runs = false

  const ask = (params: PlanParams): Promise<PlanResult> =>
    client ? client.sendRequest<PlanResult>(planRequest, params) : Promise.reject(new Error(stopped))

  const viewOf = (uri: Uri): View | undefined => {
    const key = uri.toString()
    const subject = subjectOf(uri)
    if (!views.has(key) && subject)
      views.set(key, { uri, subject, page: {}, version: Date.now(), due: true, asking: false })
    return views.get(key)
  }

  const turn = (view: View, page: PlanPage): void => {
    const same = pageText(page) === pageText(view.page)
    view.page = page
    if (same) return
    view.version += 1
    changed.fire([{ type: FileChangeType.Changed, uri: view.uri }])
  }

  const isVisible = ({ uri }: View): boolean =>
    window.visibleTextEditors.some(({ document }) => document.uri.toString() === uri.toString())

  /** Why the plan that is shown may no longer hold, or the new one. */
  const pageFrom = (result: PlanResult, { page, subject }: View): PlanPage => {
    if (result.type === 'plan') return { plan: { text: result.text, made: new Date() } }
    const outdated =
      result.type === 'no-file'
        ? 'The job file is closed or deleted.'
        : `The job no longer has ${subject.path}.`
    return { ...page, outdated }
  }

  /** Asks until the answer is of the job as it is now. */
  const refresh = async (view: View): Promise<void> => {
    if (view.asking || !runs) return
    view.asking = true
    try {
      while (view.due && runs) {
        view.due = false
        const { job, path } = view.subject
        const result = await ask({ textDocument: { uri: job }, path }).catch(() => undefined)
        if (result) turn(view, pageFrom(result, view))
        else if (runs) turn(view, { ...view.page, outdated: 'The language server did not answer.' })
      }
    } finally {
      view.asking = false
    }
  }

  const refreshVisible = (): void => {
    for (const view of views.values()) if (view.due && isVisible(view)) void refresh(view)
  }

  const provider: FileSystemProvider = {
    onDidChangeFile: changed.event,
    watch: () => ({ dispose: () => {} }),
    stat: (uri) => {
      const view = viewOf(uri)
      if (!view) throw FileSystemError.FileNotFound(uri)
      const size = new TextEncoder().encode(pageText(view.page)).length
      return { type: FileType.File, ctime: 0, mtime: view.version, size }
    },
    readFile: (uri) => {
      const view = viewOf(uri)
      if (!view) throw FileSystemError.FileNotFound(uri)
      void refresh(view)
      return new TextEncoder().encode(pageText(view.page))
    },
    readDirectory: () => [],
    createDirectory: (uri) => refuse(uri),
    writeFile: (uri) => refuse(uri),
    delete: (uri) => refuse(uri),
    rename: (uri) => refuse(uri),
  }

  const show = async (job: string, { path, text }: { path: string; text: string }): Promise<void> => {
    const uri = Uri.from(planLocation({ job, path }))
    const view = viewOf(uri)
    if (!view) return
    view.due = false
    turn(view, { plan: { text, made: new Date() } })
    await window.showTextDocument(uri, { viewColumn: ViewColumn.Beside, preview: true })
  }

  const showAsked = async (params: PlanParams): Promise<void> => {
    const { uri } = params.textDocument
    const result = await ask(params)
    if (result.type === 'plan') return show(uri, result)
    const drives = result.type === 'no-such-drive' ? result.drives : []
    if (drives.length === 0) {
      await window.showInformationMessage('This job has no drive yet. Add a drive to get a plan.')
      return
    }
    const path = await window.showQuickPick(drives, { placeHolder: 'Choose a drive to plan' })
    if (path !== undefined) await showAsked({ textDocument: { uri }, path })
  }

  const showHere = async (job?: Uri): Promise<void> => {
    const isJob = (uri: Uri): boolean => !job || uri.toString() === job.toString()
    const editors = [
      ...(window.activeTextEditor ? [window.activeTextEditor] : []),
      ...window.visibleTextEditors,
    ]
    const open = editors.find(({ document }) => isJob(document.uri))
    const editor = open ?? (job && (await window.showTextDocument(job)))
    if (!editor) return
    const { line, character } = editor.selection.active
    await showAsked({
      textDocument: { uri: editor.document.uri.toString() },
      position: { line, character },
    })
  }

  const whenExecuted: PlanView['whenExecuted'] = async (command, args, next) =>
    command === planCommand ? showAsked(args[0] as PlanParams) : next(command, args)

  const listening = [
    workspace.registerFileSystemProvider(planScheme, provider, { isCaseSensitive: true, isReadonly: true }),
    window.onDidChangeVisibleTextEditors(refreshVisible),
    workspace.onDidCloseTextDocument(({ uri }) => void views.delete(uri.toString())),
    changed,
  ]

  return {
    connect: (given) => {
      client = given
      given.onNotification(planChanged, ({ uris }: PlanChangedParams) => {
        for (const view of views.values()) view.due ||= uris.includes(view.subject.job)
        refreshVisible()
      })
    },
    showHere,
    whenExecuted,
    serverRuns: () => {
      runs = true
      for (const view of views.values()) view.due = true
      refreshVisible()
    },
    serverStopped: () => {
      runs = false
      for (const view of views.values()) turn(view, { ...view.page, outdated: stopped })
    },
    dispose: () => {
      for (const one of listening) one.dispose()
    },
  }
}

const refuse = (uri: Uri): never => {
  throw FileSystemError.NoPermissions(uri)
}
