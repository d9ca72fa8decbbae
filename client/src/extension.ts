// The VS Code extension on a computer: the language server is a process of Node.
import type { ExtensionContext } from 'vscode'
import { LanguageClient, type ServerOptions, TransportKind } from 'vscode-languageclient/node'
import { activateWith } from './activate.ts'
import type { LanguageServer } from './language-server.ts'
import { nodeFlags } from './node-flags.ts'

const debugPort = 6009

let server: Promise<LanguageServer> | undefined

export const activate = async (context: ExtensionContext): Promise<void> => {
  const program = { module: context.asAbsolutePath('dist/server.mjs'), transport: TransportKind.ipc }
  const started = (...flags: readonly string[]) => ({
    ...program,
    options: { execArgv: [...nodeFlags, ...flags] },
  })
  const serverOptions: ServerOptions = {
    run: started(),
    debug: started('--enable-source-maps', `--inspect=${debugPort}`),
  }
  server = activateWith(
    context,
    (options) => new LanguageClient('shaftwright', 'Shaftwright', serverOptions, options),
  )
  await server
}

export const deactivate = async (): Promise<void> => (await server)?.stop()
