// The language server in a Web Worker. It has no disk: the editor reads files for it.
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser'
import { today } from '../host/today.ts'
import { features } from './features.ts'
import { startServer } from './server.ts'
import { clientFiles } from './transport/client-files.ts'

const worker = globalThis as unknown as ConstructorParameters<typeof BrowserMessageReader>[0]
const connection = createConnection(new BrowserMessageReader(worker), new BrowserMessageWriter(worker))

startServer(connection, { ...clientFiles(connection), today }, features)
