import assert from 'node:assert/strict'
import { afterEach, describe, it } from 'mocha'
import {
  type CodeAction,
  type CompletionList,
  commands,
  Selection,
  type SemanticTokens,
  type SemanticTokensLegend,
  type TextEdit,
  TextEditorRevealType,
  WorkspaceEdit,
  window,
  workspace,
} from 'vscode'
import { codeOf, diagnosticsOnce, openJob, positionOf } from './support/job.ts'
import { takePictures } from './support/picture.ts'

const faulty = 'survey-launch-as-found.wright'

const openAt = async (words: string, within = words) => {
  const editor = await openJob(faulty)
  const { document } = editor
  await diagnosticsOnce(document.uri, (found) => found.length > 0)
  const at = positionOf(document, words, within)
  editor.selection = new Selection(at, at)
  editor.revealRange(editor.selection, TextEditorRevealType.InCenter)
  await commands.executeCommand('workbench.action.closePanel')
  return { editor, document, at }
}

describe('writing a job file', () => {
  afterEach(() => commands.executeCommand('workbench.action.files.revert'))

  it('offers the facts that a block can have', async () => {
    const { editor, document, at } = await openAt('seal {')
    const endOfLine = document.lineAt(at.line).range.end
    await editor.edit((edit) => edit.insert(endOfLine, '\n    '))
    const here = editor.selection.active.with(at.line + 1, 4)
    editor.selection = new Selection(here, here)
    const { items } = await commands.executeCommand<CompletionList>(
      'vscode.executeCompletionItemProvider',
      document.uri,
      here,
    )
    const labels = items.map(({ label }) => (typeof label === 'string' ? label : label.label))
    assert.ok(labels.includes('compression'), labels.join(', '))
    assert.ok(!labels.includes('shaft-size'), 'what stands there already is not offered again')
    await takePictures('completion', ['.suggest-widget.visible .monaco-list-row'], () =>
      commands.executeCommand('editor.action.triggerSuggest'),
    )
    await commands.executeCommand('hideSuggestWidget')
  })

  it('puts a fault right by its quick fix', async () => {
    const { document, at } = await openAt('flexibel')
    const [fix] = await commands.executeCommand<CodeAction[]>(
      'vscode.executeCodeActionProvider',
      document.uri,
      document.getWordRangeAtPosition(at),
      'quickfix',
      9,
    )
    assert.ok(fix?.edit, 'there is a quick fix')
    await takePictures('quick-fix', ['.action-widget .monaco-list-row'], () =>
      commands.executeCommand('editor.action.quickFix'),
    )
    await commands.executeCommand('hideCodeActionWidget')
    assert.ok(await workspace.applyEdit(fix.edit))
    assert.match(document.lineAt(at.line).text, /kind: +flexible$/)
    await diagnosticsOnce(document.uri, (found) => !found.map(codeOf).includes('job/value-not-allowed'))
  })

  it('is laid out by Format Document', async () => {
    const { editor, document } = await openAt('battery house')
    const before = document.getText()
    const line = positionOf(document, 'capacity:').line
    await editor.edit((edit) =>
      edit.replace(document.lineAt(line).range, document.lineAt(line).text.replace(/ +/g, ' ')),
    )
    assert.ok(document.getText() !== before)
    const edits = await commands.executeCommand<TextEdit[]>(
      'vscode.executeFormatDocumentProvider',
      document.uri,
      { tabSize: 2, insertSpaces: true },
    )
    const edit = new WorkspaceEdit()
    edit.set(document.uri, edits)
    await workspace.applyEdit(edit)
    assert.equal(document.getText(), before)
  })

  it('shows in colours what each word is', async () => {
    const { document } = await openAt('battery house')
    const legend = await commands.executeCommand<SemanticTokensLegend>(
      'vscode.provideDocumentSemanticTokensLegend',
      document.uri,
    )
    const { data } = await commands.executeCommand<SemanticTokens>(
      'vscode.provideDocumentSemanticTokens',
      document.uri,
    )
    assert.ok(legend.tokenTypes.length > 0)
    assert.ok(data.length > 5 * 100, `${data.length / 5} words have a colour`)
    assert.equal(window.activeTextEditor?.document.languageId, 'shaftwright')
  })
})
