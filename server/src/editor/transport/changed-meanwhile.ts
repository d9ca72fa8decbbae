import { LSPErrorCodes, ResponseError } from 'vscode-languageserver'

/** The answer where the text was edited while files were read for it. */
export const changedMeanwhile = (): ResponseError<void> =>
  new ResponseError(LSPErrorCodes.ContentModified, 'The text has changed meanwhile.')
