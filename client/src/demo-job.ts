import {
  commands,
  languages,
  type Tab,
  TabInputText,
  type TextDocument,
  type TextEditor,
  Uri,
  ViewColumn,
  window,
  workspace,
} from 'vscode'
import { untitledJob } from './untitled-job.ts'

export type DemoJob = {
  /** Shows the copy that is open, else a new one. */
  readonly show: () => Promise<TextEditor>
  /** Shows it where it has a tab, else beside the active editor, as soon as it has been checked. */
  readonly showChecked: () => Promise<TextEditor>
}

/** A copy of the demo job with faults, to change at will: nothing is saved unless the user saves it. */
export const createDemoJob = (extension: Uri): DemoJob => {
  let copy: TextDocument | undefined

  const open = async (): Promise<TextDocument> => {
    if (copy && !copy.isClosed) return copy
    const file = Uri.joinPath(extension, 'docs/examples/survey-launch-as-found.wright')
    const content = new TextDecoder().decode(await workspace.fs.readFile(file))
    copy = await untitledJob('survey-launch', content)
    return copy
  }

  const show: DemoJob['show'] = async () => {
    const document = await open()
    return window.showTextDocument(document, { viewColumn: columnOf(document), preview: false })
  }

  const showChecked: DemoJob['showChecked'] = async () => {
    if (!copy || copy.isClosed || columnOf(copy) === ViewColumn.Active) await goBeside()
    const editor = await show()
    await firstFindings(editor.document.uri)
    return editor
  }

  return { show, showChecked }
}

/** The group with a tab of the document, also where another tab is in front of it; else the active group. */
const columnOf = (document: TextDocument): ViewColumn => {
  const isOfIt = ({ input }: Tab): boolean =>
    input instanceof TabInputText && input.uri.toString() === document.uri.toString()
  return window.tabGroups.all.find(({ tabs }) => tabs.some(isOfIt))?.viewColumn ?? ViewColumn.Active
}

/** Goes to the group beside the active one first. VS Code opens an unsaved text by itself in the active group when nobody has shown it for a
 * while: `ViewColumn.Beside` would then show it twice. */
const goBeside = (): Thenable<unknown> =>
  commands.executeCommand(
    window.tabGroups.all.length > 1 ? 'workbench.action.focusNextGroup' : 'workbench.action.newGroupRight',
  )

/** How long the language server gets for its first findings: it may have to start. */
const patience = 15_000

const firstFindings = (uri: Uri): Promise<void> =>
  new Promise((done) => {
    const finish = (): void => {
      clearTimeout(timer)
      listening.dispose()
      done()
    }
    const look = (): void => {
      if (languages.getDiagnostics(uri).length > 0) finish()
    }
    const timer = setTimeout(finish, patience)
    const listening = languages.onDidChangeDiagnostics(look)
    look()
  })
