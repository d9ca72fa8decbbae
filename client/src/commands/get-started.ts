import {
  type CompletionList,
  commands,
  type Hover,
  languages,
  Position,
  Selection,
  type TextEditor,
  window,
} from 'vscode'
import type { DemoJob } from '../demo-job.ts'
import type { LanguageServer } from '../language-server.ts'
import type { Command } from './command.ts'

/** What a step of the walkthrough does in the demo job. True when there was something to see. */
type Step = (editor: TextEditor, server: LanguageServer) => Promise<boolean>

const moveTo = (editor: TextEditor, position: Position): void => {
  editor.selection = new Selection(position, position)
  editor.revealRange(editor.selection)
}

/** The page that was clicked may take the focus back while the server answers, and an editor without focus closes what it shows. */
const focus = ({ document, viewColumn, selection }: TextEditor): Thenable<unknown> =>
  window.showTextDocument(document, { ...(viewColumn && { viewColumn }), selection, preview: false })

const findingsOf = ({ document }: TextEditor) => languages.getDiagnostics(document.uri)

const atFirstReading = (editor: TextEditor): boolean => {
  const { document } = editor
  const name = /(?<=^\s*reading\s+)\S/m.exec(document.getText())
  if (name) moveTo(editor, document.positionAt(name.index))
  return name !== null
}

/** Puts the cursor on an empty line below the last reading, and makes that line where there is none. */
const belowLastReading = async (editor: TextEditor): Promise<boolean> => {
  const { document } = editor
  const last = [...document.getText().matchAll(/^([ \t]*)reading\b[\s\S]*?\n\1\}/gm)].at(-1)
  if (!last) return false
  const { end } = document.lineAt(document.positionAt(last.index + last[0].length)).range
  const [, indent = ''] = last
  const below = end.line + 1 < document.lineCount ? document.lineAt(end.line + 1).text : undefined
  if (below !== indent || below === '') await editor.edit((edit) => edit.insert(end, `\n${indent}`))
  moveTo(editor, new Position(end.line + 1, indent.length))
  return true
}

const steps: Readonly<Record<string, Step>> = {
  demo: async () => true,
  finding: async (editor) => {
    await commands.executeCommand('editor.action.marker.next')
    return findingsOf(editor).some(({ range }) => range.contains(editor.selection.active))
  },
  findings: async (editor) => {
    await commands.executeCommand('workbench.actions.view.problems')
    return findingsOf(editor).length > 0
  },
  hover: async (editor) => {
    if (!atFirstReading(editor)) return false
    const { document, selection } = editor
    const hovers = await commands.executeCommand<Hover[]>(
      'vscode.executeHoverProvider',
      document.uri,
      selection.active,
    )
    await focus(editor)
    await commands.executeCommand('editor.action.showHover')
    return hovers.length > 0
  },
  plan: async (editor, server) => {
    if (!atFirstReading(editor)) return false
    await server.showPlan()
    return window.visibleTextEditors.some(({ document }) => document.uri.scheme === 'shaftwright-plan')
  },
  reading: async (editor) => {
    if (!(await belowLastReading(editor))) return false
    const { document, selection } = editor
    const { items } = await commands.executeCommand<CompletionList>(
      'vscode.executeCompletionItemProvider',
      document.uri,
      selection.active,
    )
    await focus(editor)
    await commands.executeCommand('editor.action.triggerSuggest')
    return items.length > 0
  },
}

/** Takes a step of the walkthrough, which ticks it when its context key is set; without a step opens the walkthrough. */
export const getStarted = (demo: DemoJob): Command => ({
  id: 'shaftwright.getStarted',
  run: async (server, argument) => {
    const step = typeof argument === 'string' ? steps[argument] : undefined
    if (!step)
      await commands.executeCommand('workbench.action.openWalkthrough', 'shaftwright.shaftwright#getStarted')
    else if (await step(await demo.showChecked(), server))
      await commands.executeCommand('setContext', `shaftwright.seen.${argument}`, true)
  },
})
