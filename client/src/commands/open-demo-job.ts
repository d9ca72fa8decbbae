import { Uri, window, workspace } from 'vscode'
import type { Command } from './command.ts'

/** A copy of the faulty demo job, to be spoilt and mended at will: it is saved nowhere unless the user does. */
export const openDemoJob = (extension: Uri): Command => ({
  id: 'shaftwright.openDemoJob',
  run: async () => {
    const file = Uri.joinPath(extension, 'docs/examples/survey-launch-as-found.wright')
    const content = new TextDecoder().decode(await workspace.fs.readFile(file))
    await window.showTextDocument(await workspace.openTextDocument({ language: 'shaftwright', content }))
  },
})
