import { CancellationToken, ErrorCodes, LSPErrorCodes, ResponseError } from 'vscode-languageserver'
import { malformed } from './malformed.ts'

/** Where a server stands in its life (LSP 3.17, Server lifecycle). */
export type Phase = 'new' | 'running' | 'shut down'

const isCancellation = (error: unknown): boolean =>
  error instanceof ResponseError &&
  (error.code === LSPErrorCodes.RequestCancelled || error.code === LSPErrorCodes.ServerCancelled)

export const wordsOf = (error: unknown): string =>
  error instanceof Error ? (error.stack ?? error.message) : String(error)

/** The answer to whatever is asked outside of the phase in which the server works. */
export function refusal(phase: Phase): ResponseError<never> | undefined {
  if (phase === 'new') return new ResponseError(ErrorCodes.ServerNotInitialized, 'Send initialize first.')
  if (phase === 'shut down')
    return new ResponseError(ErrorCodes.InvalidRequest, 'After shutdown, only exit is accepted.')
  return undefined
}

/** The answer to what is not wanted any more. */
export const cancelled = (): ResponseError<never> =>
  new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled')

/** Wraps handlers so that they run only while the server does, and so that one that fails costs its own answer and a line in the log, and
 * nothing else. */
export const guards = (log: (words: string) => void, phase: () => Phase) => {
  const own =
    <P>(what: string, work: (of: P) => void | Promise<void>) =>
    async (of: P): Promise<void> => {
      if (phase() !== 'running') return
      try {
        await work(of)
      } catch (error) {
        log(`${what} failed: ${wordsOf(error)}`)
      }
    }
  return {
    /** For what the server does of itself. */
    own,
    /** For what is told. */
    notification: <P>(method: string, handle: (params: P) => void | Promise<void>) =>
      own(method, (params: P) => {
        const wrong = malformed(method, params)
        return wrong === undefined ? handle(params) : log(wrong)
      }),
    /** For what is asked. */
    request:
      <P, R, More extends readonly unknown[]>(
        method: string,
        handle: (params: P, token: CancellationToken, ...more: More) => R | Promise<R>,
      ) =>
      // Where nothing is sent along, the library gives the token alone, in the place of the params.
      async (
        params: P,
        token: CancellationToken = CancellationToken.None,
        ...more: More
      ): Promise<R | ResponseError<never>> => {
        const refused = refusal(phase())
        if (refused) return refused
        if (token.isCancellationRequested) return cancelled()
        const wrong = malformed(method, params)
        if (wrong !== undefined) {
          log(wrong)
          return new ResponseError(ErrorCodes.InvalidParams, wrong)
        }
        try {
          const answer = await handle(params, token, ...more)
          return token.isCancellationRequested ? cancelled() : answer
        } catch (error) {
          if (isCancellation(error)) throw error
          log(`${method} failed: ${wordsOf(error)}`)
          return new ResponseError(ErrorCodes.InternalError, `${method} failed. See the server log.`)
        }
      },
  }
}

export type Guards = ReturnType<typeof guards>
