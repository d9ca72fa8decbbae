import assert from 'node:assert/strict'
import { describe, it } from 'mocha'
import { commands, type Hover, MarkdownString, Selection, TextEditorRevealType } from 'vscode'
import { diagnosticsOnce, openJob, positionOf } from './support/job.ts'
import { takePictures } from './support/picture.ts'

const textOf = ({ contents }: Hover): string =>
  contents
    .map((one) => (one instanceof MarkdownString || typeof one === 'object' ? one.value : one))
    .join('\n')

describe('the hover on a reading', () => {
  it('says how far each foot goes', async () => {
    const editor = await openJob('survey-launch-as-found.wright')
    const { document } = editor
    await diagnosticsOnce(document.uri, (found) => found.length > 0)
    const at = positionOf(document, 'reading dry-1', 'dry-1')
    const hovers = await commands.executeCommand<Hover[]>('vscode.executeHoverProvider', document.uri, at)
    const text = hovers.map(textOf).join('\n')
    for (const [, foot] of document.getText().matchAll(/^\s*foot\s+([\w-]+)/gm)) {
      assert.match(text, new RegExp(`${foot}.*\\d+[.,]\\d+ mm`))
    }
    assert.match(text, /\bturn/)
    assert.match(text, /±/)

    editor.selection = new Selection(at, at)
    editor.revealRange(editor.selection, TextEditorRevealType.InCenter)
    await commands.executeCommand('workbench.action.closePanel')
    await takePictures('hover', ['.monaco-hover:not(.hidden) .hover-contents', '.squiggly-error'], () =>
      commands.executeCommand('editor.action.showHover'),
    )
  })
})
