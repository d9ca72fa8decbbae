import {
  type Diagnostic,
  languages,
  type TextDocument,
  type TextEditor,
  type Uri,
  window,
  workspace,
} from 'vscode'

/** Opens a demo job of the folder the workbench shows. */
export const openJob = async (name: string): Promise<TextEditor> => {
  const [uri] = await workspace.findFiles(name)
  if (!uri) throw new Error(`${name} is not in the folder.`)
  return window.showTextDocument(await workspace.openTextDocument(uri))
}

export const codeOf = ({ code }: Diagnostic): string => String(typeof code === 'object' ? code.value : code)

/** The diagnostics of a file as soon as they hold what is waited for. */
export const diagnosticsOnce = async (
  uri: Uri,
  holds: (diagnostics: readonly Diagnostic[]) => boolean,
): Promise<readonly Diagnostic[]> => {
  const { promise, resolve } = Promise.withResolvers<readonly Diagnostic[]>()
  const look = (): void => {
    const diagnostics = languages.getDiagnostics(uri)
    if (holds(diagnostics)) resolve(diagnostics)
  }
  const listening = languages.onDidChangeDiagnostics(look)
  look()
  return promise.finally(() => listening.dispose())
}

export const positionOf = (document: TextDocument, words: string, within = words) => {
  const at = document.getText().indexOf(words)
  if (at < 0) throw new Error(`"${words}" is not in ${document.uri.path}.`)
  return document.positionAt(at + words.indexOf(within) + 1)
}
