// The VS Code extension on a computer: the language server is a process of Node.
import type { ExtensionContext } from 'vscode'
import { LanguageClient, type ServerOptions, TransportKind } from 'vscode-languageclient/node'
import { activateWith } from './activate.ts'
import type { LanguageServer } from './language-server.ts'

const debugPort = 6009

let server: Promise<LanguageServer> | undefined

export const activate = async (context: ExtensionContext): Promise<void> => {
  const run = { module: context.asAbsolutePath('dist/server.js'), transport: TransportKind.ipc }
  const serverOptions: ServerOptions = {
    run,
    debug: { ...run, options: { execArgv: ['--enable-source-maps', `--inspect=${debugPort}`] } },
  }
  server = activateWith(
    context,
    (options) => new LanguageClient('shaftwright', 'Shaftwright', serverOptions, options),
  )
  await server
}

export const deactivate = async (): Promise<void> => (await server)?.stop()
