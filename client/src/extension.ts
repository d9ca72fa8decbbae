// The VS Code extension: starts the language server and adds what only an editor can.
import { commands, type ExtensionContext, window } from 'vscode'
import { restartServer } from './commands/restart-server.ts'
import { showLog } from './commands/show-log.ts'
import { showPlan } from './commands/show-plan.ts'
import { startServer } from './commands/start-server.ts'
import { createLanguageServer, type LanguageServer } from './language-server.ts'
import { createPlanView } from './plan-view.ts'
import { createServerStatus } from './status.ts'

let server: LanguageServer | undefined

export const activate = async (context: ExtensionContext): Promise<void> => {
  const log = window.createOutputChannel('Shaftwright', { log: true })
  const status = createServerStatus()
  const plans = createPlanView()
  const running = createLanguageServer({
    module: context.asAbsolutePath('dist/server.js'),
    log,
    status,
    plans,
  })
  context.subscriptions.push(
    log,
    status,
    plans,
    ...[startServer, restartServer, showLog, showPlan].map(({ id, run }) =>
      commands.registerCommand(id, () => run(running)),
    ),
  )
  server = running
  await running.start()
}

export const deactivate = (): Promise<void> | undefined => server?.stop()
