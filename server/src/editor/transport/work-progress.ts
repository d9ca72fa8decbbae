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
  let display: ProgressReporter | 'asked' | undefined
  let ended = false
  const begin = (): void => {
    if (typeof token === 'string' || typeof token === 'number') {
      const reporter = window.attachWorkDoneProgress(token)
      reporter.begin(title, 0, undefined, true)
      display = reporter
    } else if (shows && performance.now() - start > patience) {
      display = 'asked'
      const take = (reporter: Awaited<ReturnType<typeof window.createWorkDoneProgress>>) => {
        reporter.begin(title, 0, undefined, true)
        display = reporter
        if (ended) reporter.done()
      }
      window.createWorkDoneProgress().then(take, () => {})
    }
  }
  return {
    report: (done, of) => {
      if (!display) begin()
      if (display && display !== 'asked') display.report(Math.floor((done / of) * 100))
    },
    end: () => {
      ended = true
      if (display && display !== 'asked') display.done()
    },
    isStopped: () =>
      display !== undefined && display !== 'asked' && display.token?.isCancellationRequested === true,
  }
}
