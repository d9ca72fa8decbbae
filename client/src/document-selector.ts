/** Job files on disk, unsaved ones, and those of the folders that are open, wherever these lie. An older version, shown beside the one of today, is
 * none of them: its parts are not there to be found, and nobody can put it right. */
export const documentSelector = (
  folderSchemes: readonly string[],
): { readonly language: string; readonly scheme: string }[] =>
  [...new Set(['file', 'untitled', ...folderSchemes])].map((scheme) => ({ language: 'shaftwright', scheme }))
