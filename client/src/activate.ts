// The extension on every host: what runs the language server is given, everything else is the same.
import { commands, type ExtensionContext, window } from 'vscode'
import { openDemoJob } from './commands/open-demo-job.ts'
import { restartServer } from './commands/restart-server.ts'
import { showLog } from './commands/show-log.ts'
import { showPlan } from './commands/show-plan.ts'
import { startServer } from './commands/start-server.ts'
import { answerFileRequests } from './files.ts'
import { type ClientFactory, createLanguageServer, type LanguageServer } from './language-server.ts'
import { createPlanView } from './plan-view.ts'
import { createServerStatus } from './status.ts'

export const activateWith = async (
  { subscriptions, extensionUri }: ExtensionContext,
  createClient: ClientFactory,
): Promise<LanguageServer> => {
  const log = window.createOutputChannel('Shaftwright', { log: true })
  const status = createServerStatus()
  const plans = createPlanView()
  const server = createLanguageServer({ createClient, log, status, plans, prepare: answerFileRequests })
  subscriptions.push(
    log,
    status,
    plans,
    ...[openDemoJob(extensionUri), startServer, restartServer, showLog, showPlan].map(({ id, run }) =>
      commands.registerCommand(id, () => run(server)),
    ),
  )
  await server.start()
  return server
}
