import type { Connection } from 'vscode-languageserver'

/** Milliseconds before progress is reported for a request without a progress token. */
const patience = 500

interface ProgressReporter {
  readonly report: (percent: number) => void
  readonly done: () => void
  readonly token?: { readonly isCancellationRequested: boolean }
}

export interface WorkProgress {
  readonly report: (done: number, of: number) => void
  readonly end: () => void
  /** Whether somebody has stopped the work where its progress is shown. */
  readonly isStopped: () => boolean
}

/** Tells the editor how far some work is (LSP 3.17, Work Done Progress): by the token that came with the request, or by one of the server's own where
 * the editor shows such progress. Work that ends at once is not told of. */
export function workProgress(
  { window }: Pick<Connection, 'window'>,
  { title, token, shows }: { readonly title: string; readonly token: unknown; readonly shows: boolean },
): WorkProgress {
  const start = performance.now()
  let told: ProgressReporter | 'asked' | undefined
  let ended = false
  const begin = (): void => {
    if (typeof token === 'string' || typeof token === 'number') {
      const reporter = window.attachWorkDoneProgress(token)
      reporter.begin(title, 0, undefined, true)
      told = reporter
    } else if (shows && performance.now() - start > patience) {
      told = 'asked'
      const take = (reporter: Awaited<ReturnType<typeof window.createWorkDoneProgress>>) => {
        reporter.begin(title, 0, undefined, true)
        told = reporter
        if (ended) reporter.done()
      }
      window.createWorkDoneProgress().then(take, () => {})
    }
  }
  return {
    report: (done, of) => {
      if (!told) begin()
      if (told && told !== 'asked') told.report(Math.floor((done / of) * 100))
    },
    end: () => {
      ended = true
      if (told && told !== 'asked') told.done()
    },
    isStopped: () => told !== undefined && told !== 'asked' && told.token?.isCancellationRequested === true,
  }
}
