// Shows the plan that the server works out: read-only, beside the job file.
import {
  commands,
  type Disposable,
  EventEmitter,
  languages,
  Uri,
  ViewColumn,
  window,
  workspace,
} from 'vscode'
import type { ExecuteCommandMiddleware } from 'vscode-languageclient'

/** The server's own command: it answers with the plan as plain text. */
const planCommand = 'shaftwright.plan'

export type PlanView = Disposable & {
  /** The plan of the drive or the reading the cursor is in. */
  readonly showHere: () => Promise<void>
  /** Shows what the server answers to its command, whoever ran it: a lens or the palette. */
  readonly whenExecuted: NonNullable<ExecuteCommandMiddleware['executeCommand']>
}

const scheme = 'shaftwright-plan'
/** Plain text under a name of its own, so that long lines are wrapped. */
const language = 'shaftwright-plan'

export const createPlanView = (): PlanView => {
  const plans = new Map<string, string>()
  const changed = new EventEmitter<Uri>()
  const provider = workspace.registerTextDocumentContentProvider(scheme, {
    onDidChange: changed.event,
    provideTextDocumentContent: ({ path }) => plans.get(path) ?? 'Show the plan again from its job file.',
  })

  const show = async (plan: string): Promise<void> => {
    const path = `/Plan of ${plan.split(':', 1)[0]}`
    const uri = Uri.from({ scheme, path })
    plans.set(path, plan)
    changed.fire(uri)
    const document = await languages.setTextDocumentLanguage(await workspace.openTextDocument(uri), language)
    await window.showTextDocument(document, { viewColumn: ViewColumn.Beside, preview: true })
  }

  const whenExecuted: PlanView['whenExecuted'] = async (command, args, next) => {
    const answer: unknown = await next(command, args)
    if (command !== planCommand) return answer
    if (typeof answer === 'string') await show(answer)
    else await window.showInformationMessage('Put the cursor in a drive of a job file: its plan is shown.')
    return answer
  }

  const showHere = async (): Promise<void> => {
    const editor = window.activeTextEditor
    if (!editor) return
    const { line, character } = editor.selection.active
    const textDocument = { uri: editor.document.uri.toString() }
    await commands.executeCommand(planCommand, { textDocument, position: { line, character } })
  }

  return {
    showHere,
    whenExecuted,
    dispose: () => {
      provider.dispose()
      changed.dispose()
    },
  }
}
