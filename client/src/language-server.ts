// Starts, watches and stops the language server, and says so when it does not run.
import { type LogOutputChannel, window } from 'vscode'
import {
  CloseAction,
  ErrorAction,
  LanguageClient,
  type LanguageClientOptions,
  RevealOutputChannelOn,
  type ServerOptions,
  State,
  TransportKind,
} from 'vscode-languageclient/node'
import type { PlanView } from './plan-view.ts'
import { mayRestart } from './restart-policy.ts'
import type { ServerStatus } from './status.ts'

export type LanguageServer = {
  readonly start: () => Promise<void>
  readonly stop: () => Promise<void>
  readonly restart: () => Promise<void>
  readonly showLog: () => void
  readonly showPlan: () => Promise<void>
}

type Parts = {
  readonly module: string
  readonly log: LogOutputChannel
  readonly status: ServerStatus
  readonly plans: PlanView
}

const debugPort = 6009

/** The library shows errors of its own with its own words; here they go to the log, and `fail` tells the user once. */
class QuietClient extends LanguageClient {
  override error(message: string, data?: unknown): void {
    super.error(message, data, false)
  }
}

export const createLanguageServer = ({ module, log, status, plans }: Parts): LanguageServer => {
  let wanted = false
  let deaths: number[] = []

  const run = { module, transport: TransportKind.ipc }
  const serverOptions: ServerOptions = {
    run,
    debug: { ...run, options: { execArgv: ['--enable-source-maps', `--inspect=${debugPort}`] } },
  }
  const clientOptions: LanguageClientOptions = {
    documentSelector: [{ language: 'shaftwright' }],
    outputChannel: log,
    revealOutputChannelOn: RevealOutputChannelOn.Never,
    // What to do when the server stops is decided once, where its state is watched; and told once, by `fail`.
    errorHandler: {
      error: (_error, _message, count = 0) => ({
        action: count <= 3 ? ErrorAction.Continue : ErrorAction.Shutdown,
        handled: true,
      }),
      closed: () => ({ action: CloseAction.DoNotRestart, handled: true }),
    },
    initializationFailedHandler: () => false,
    middleware: { executeCommand: plans.whenExecuted },
  }
  const client = new QuietClient('shaftwright', 'Shaftwright', serverOptions, clientOptions)

  const fail = async (what: string): Promise<void> => {
    wanted = false
    status.show('failed')
    const choice = await window.showErrorMessage(
      `The Shaftwright language server ${what}. Until it runs, job files are not checked.`,
      'Restart',
      'Show Log',
    )
    if (choice === 'Restart') await restart()
    if (choice === 'Show Log') log.show()
  }

  const launch = async (): Promise<void> => {
    status.show('starting')
    try {
      await client.start()
    } catch {
      // The reason is in the log already.
      void fail('could not start')
    }
  }

  client.onDidChangeState(({ oldState, newState }) => {
    if (newState === State.Running) {
      status.show('running')
      log.info('The language server runs.')
    }
    if (newState !== State.Stopped || oldState !== State.Running) return
    if (!wanted) return status.show('stopped')
    const now = Date.now()
    deaths = [...deaths, now]
    if (!mayRestart(deaths, now)) return void fail('stopped again and again')
    log.warn('The language server stopped unexpectedly and is started again.')
    // The client still has to finish its own clean-up in this turn.
    setImmediate(() => void launch())
  })

  const start = async (): Promise<void> => {
    if (wanted) return
    wanted = true
    deaths = []
    await launch()
  }
  const stop = async (): Promise<void> => {
    wanted = false
    if (client.needsStop()) await client.stop()
  }
  const restart = async (): Promise<void> => {
    await stop()
    await start()
  }
  return { start, stop, restart, showLog: () => log.show(), showPlan: plans.showHere }
}
