// The VS Code extension in a browser: the language server is a Web Worker.
import { type ExtensionContext, Uri } from 'vscode'
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from 'vscode-languageclient/browser'
import { activateWith } from './activate.ts'
import type { LanguageServer } from './language-server.ts'

/** The browser's, of which the types of Node know nothing. */
declare class Worker {
  constructor(url: string)
  terminate(): void
}

let server: Promise<LanguageServer> | undefined

export const activate = async (context: ExtensionContext): Promise<void> => {
  const at = (path: string): string => Uri.joinPath(context.extensionUri, path).toString(true)
  let worker: Worker | undefined
  // VS Code's workers are none to the library, whose test is `instanceof`: it gets the two ends ready made.
  const startWorker = async () => {
    worker?.terminate()
    worker = new Worker(at('dist/server-web.js'))
    return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) }
  }
  server = activateWith(
    context,
    (options) =>
      new LanguageClient('shaftwright', 'Shaftwright', startWorker, {
        ...options,
        initializationOptions: { docs: at('docs/checks') },
      }),
  )
  await server
}

export const deactivate = async (): Promise<void> => (await server)?.stop()
