import { ErrorCodes, LSPErrorCodes, ResponseError } from 'vscode-languageserver'

const isCancellation = (error: unknown): boolean =>
  error instanceof ResponseError &&
  (error.code === LSPErrorCodes.RequestCancelled || error.code === LSPErrorCodes.ServerCancelled)

export const wordsOf = (error: unknown): string =>
  error instanceof Error ? (error.stack ?? error.message) : String(error)

/** Wraps handlers so that one that fails costs its own answer and a line in the log, and nothing else. */
export const guards = (log: (words: string) => void) => ({
  /** For what is told. */
  told:
    <P>(method: string, handle: (params: P) => void | Promise<void>) =>
    async (params: P): Promise<void> => {
      try {
        await handle(params)
      } catch (error) {
        log(`${method} failed: ${wordsOf(error)}`)
      }
    },
  /** For what is asked. */
  asked:
    <P, R>(method: string, handle: (params: P) => R) =>
    (params: P): R | ResponseError<void> => {
      try {
        return handle(params)
      } catch (error) {
        if (isCancellation(error)) throw error
        log(`${method} failed: ${wordsOf(error)}`)
        return new ResponseError(
          ErrorCodes.InternalError,
          `${method} failed; the log of the server says why.`,
        )
      }
    },
})
