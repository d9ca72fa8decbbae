/** Where files are that need no open folder around them: on disk, not yet saved, on the other machine, in a repository that was not cloned. */
const everywhere = ['file', 'untitled', 'vscode-remote', 'vscode-vfs']

/** Where older revisions of files are, each under a URI that also gives other files of the same revision when its path is another. */
export const revisionSchemes: readonly string[] = ['git', 'gitlens', 'review', 'pr']

/** Job files on disk, unsaved ones, those of the open folders, wherever these are, and older revisions. The server gives no findings for the
 * latter: nobody can change them. */
export const documentSelector = (
  folderSchemes: readonly string[],
): { readonly language: string; readonly scheme: string }[] =>
  [...new Set([...everywhere, ...folderSchemes, ...revisionSchemes])].map((scheme) => ({
    language: 'shaftwright',
    scheme,
  }))
