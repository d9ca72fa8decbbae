import { commands, window } from 'vscode'
import { planCommand } from '../plan-view.ts'
import type { Command } from './command.ts'

/** The plan of the drive or the reading the cursor is in. */
export const showPlan: Command = {
  id: 'shaftwright.showPlan',
  run: () => {
    const editor = window.activeTextEditor
    if (!editor) return undefined
    const { line, character } = editor.selection.active
    const place = { textDocument: { uri: editor.document.uri.toString() }, position: { line, character } }
    return commands.executeCommand(planCommand, place)
  },
}
