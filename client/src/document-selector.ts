/** Where files lie that need no open folder around them: on disk, not yet saved, on the other machine, in a repository that was not cloned. */
const everywhere = ['file', 'untitled', 'vscode-remote', 'vscode-vfs']

/** Job files on disk, unsaved ones, and those of the folders that are open, wherever these lie. An older version, shown beside the one of today, is
 * none of them: its parts are not there to be found, and nobody can put it right. */
export const documentSelector = (
  folderSchemes: readonly string[],
): { readonly language: string; readonly scheme: string }[] =>
  [...new Set([...everywhere, ...folderSchemes])].map((scheme) => ({ language: 'shaftwright', scheme }))
