// Starts, watches and stops the language server, and says so when it does not run.
import { type LogOutputChannel, type Uri, window, workspace } from 'vscode'
import {
  type BaseLanguageClient,
  CloseAction,
  ErrorAction,
  type LanguageClientOptions,
  RevealOutputChannelOn,
  State,
} from 'vscode-languageclient'
import { type NewJobParams, newJobRequest } from '../../server/src/editor/client-requests.ts'
import { documentSelector } from './document-selector.ts'
import type { PlanView } from './plan-view.ts'
import { mayRestart } from './restart-policy.ts'
import type { ServerStatus } from './status.ts'

export type LanguageServer = {
  readonly start: () => Promise<void>
  readonly stop: () => Promise<void>
  readonly restart: () => Promise<void>
  readonly showLog: () => void
  /** `job`: the file, where it is not the one with the cursor. */
  readonly showPlan: (job?: Uri) => Promise<void>
  /** The text of a new job. */
  readonly newJob: (job: NewJobParams) => Promise<string>
}

/** Makes the client for where the extension runs. */
export type ClientFactory = (options: LanguageClientOptions) => BaseLanguageClient

type Parts = {
  readonly createClient: ClientFactory
  readonly log: LogOutputChannel
  readonly status: ServerStatus
  readonly plans: PlanView
  /** Sees the client before it starts. */
  readonly prepare: (client: BaseLanguageClient) => void
}

export const createLanguageServer = ({
  createClient,
  log,
  status,
  plans,
  prepare,
}: Parts): LanguageServer => {
  let wanted = false
  let deaths: number[] = []

  const clientOptions: LanguageClientOptions = {
    documentSelector: documentSelector((workspace.workspaceFolders ?? []).map(({ uri }) => uri.scheme)),
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
  const client = createClient(clientOptions)
  // The library shows errors of its own with its own words; here they go to the log, and `fail` tells the user once.
  const logError = client.error.bind(client)
  client.error = (message, data) => logError(message, data, false)
  prepare(client)
  plans.connect(client)

  const fail = async (what: string): Promise<void> => {
    wanted = false
    status.show('failed')
    const choice = await window.showErrorMessage(
      `The Shaftwright language server ${what}. Job files are not checked until it runs.`,
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
      plans.serverRuns()
      log.info('The language server is running.')
    }
    if (newState === State.Stopped) plans.serverStopped()
    if (newState !== State.Stopped || oldState !== State.Running) return
    if (!wanted) return status.show('stopped')
    const now = Date.now()
    deaths = [...deaths, now]
    if (!mayRestart(deaths, now)) return void fail('keeps stopping')
    log.warn('The language server stopped unexpectedly. Restarting it.')
    // The client still has to finish its own clean-up in this turn.
    setTimeout(() => void launch(), 0)
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
  return {
    start,
    stop,
    restart,
    showLog: () => log.show(),
    showPlan: plans.showHere,
    newJob: (job) => client.sendRequest<string>(newJobRequest, job),
  }
}
