import { commands, Range, Selection, SnippetString, type TextEditor, window } from 'vscode'
import { snippetFrom } from './blanks.ts'

type Find = (text: string, selected: { readonly start: number; readonly end: number }) => number | undefined

/** Selects a `?`, so that typing replaces it and the unit behind it stays. Where there is none, or where a line is being indented, the
 * key does what it does in any text. */
export const goToBlank = async (find: Find, otherwise: 'tab' | 'outdent'): Promise<void> => {
  const editor = window.activeTextEditor
  if (!editor) return
  const { document, selection } = editor
  const at = isIndenting(editor)
    ? undefined
    : find(document.getText(), {
        start: document.offsetAt(selection.start),
        end: document.offsetAt(selection.end),
      })
  if (at === undefined) await commands.executeCommand(otherwise)
  else await fillInFrom(editor, at)
}

/** What Tab runs in a snippet, as package.json has it: an undo stop, which a cursor makes that moves, then on to the next place. */
const ofTab = ['cursorLeft', 'cursorRight', 'hideSuggestWidget', 'jumpToNextSnippetPlaceholder']

/** Makes this `?` and those behind it the places of a snippet. From one to the next VS Code goes by itself, before it takes another key: a command
 * of an extension comes later, and a fast typist would write into the wrong place. */
export const fillInFrom = async (editor: TextEditor, at: number): Promise<void> => {
  const { document } = editor
  // The first time that VS Code runs a command it waits for extensions, and keys overtake it. Outside a snippet these do nothing.
  await commands.executeCommand('runCommands', { commands: ofTab })
  const line = document.lineAt(document.positionAt(at)).range.start
  const { snippet, end } = snippetFrom(document.getText(), { start: document.offsetAt(line), at })
  editor.selection = new Selection(line, line)
  await editor.insertSnippet(new SnippetString(snippet), new Range(line, document.positionAt(end)))
  editor.revealRange(editor.selection)
}

const isIndenting = ({ document, selections, selection }: TextEditor): boolean => {
  const before = document.lineAt(selection.start).text.slice(0, selection.start.character)
  return selections.length > 1 || !selection.isSingleLine || (before.trim() === '' && selection.isEmpty)
}
