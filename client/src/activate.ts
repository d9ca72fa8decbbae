// The extension on every host: what runs the language server is given, everything else is the same.
import { commands, type ExtensionContext, window } from 'vscode'
import { getStarted } from './commands/get-started.ts'
import { newJob } from './commands/new-job.ts'
import { nextBlank } from './commands/next-blank.ts'
import { openDemoJob } from './commands/open-demo-job.ts'
import { previousBlank } from './commands/previous-blank.ts'
import { restartServer } from './commands/restart-server.ts'
import { showLog } from './commands/show-log.ts'
import { showPlan } from './commands/show-plan.ts'
import { startServer } from './commands/start-server.ts'
import { createDemoJob } from './demo-job.ts'
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
  const demo = createDemoJob(extensionUri)
  const server = createLanguageServer({ createClient, log, status, plans, prepare: answerFileRequests })
  subscriptions.push(
    log,
    status,
    plans,
    ...[
      getStarted(demo),
      newJob,
      nextBlank,
      previousBlank,
      openDemoJob(demo),
      startServer,
      restartServer,
      showLog,
      showPlan,
    ].map(({ id, run }) => commands.registerCommand(id, (on: unknown) => run(server, on))),
  )
  await server.start()
  return server
}
