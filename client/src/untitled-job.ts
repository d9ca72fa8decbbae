import { Position, type TextDocument, Uri, WorkspaceEdit, workspace } from 'vscode'
import { freeName } from './file-paths.ts'

/** Folders in which a file that is not saved yet can have its name already. */
const saved = ['file', 'vscode-remote']

const exists = (uri: Uri): Promise<boolean> =>
  Promise.resolve(workspace.fs.stat(uri)).then(
    () => true,
    () => false,
  )

/** A job that is not saved yet. In the first folder it has a name that no other file has; without a folder, VS Code asks for one. */
export const untitledJob = async (name: string, content: string): Promise<TextDocument> => {
  const folder = workspace.workspaceFolders?.find(({ uri }) => saved.includes(uri.scheme))?.uri
  if (!folder) return workspace.openTextDocument({ language: 'shaftwright', content })
  const at = (file: string) => Uri.joinPath(folder, file)
  const unsaved = (file: string) => at(file).with({ scheme: 'untitled' })
  const isOpen = (file: string) =>
    workspace.textDocuments.some(({ uri }) => uri.toString() === unsaved(file).toString())
  const uri = unsaved(await freeName(name, async (file) => isOpen(file) || (await exists(at(file)))))
  const document = await workspace.openTextDocument(uri)
  const edit = new WorkspaceEdit()
  edit.insert(uri, new Position(0, 0), content)
  await workspace.applyEdit(edit)
  return document
}
