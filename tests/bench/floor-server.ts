// The least a language server can do: answer every change with one fixed finding, and compute nothing. What it needs is what the library,
// the channel and the client cost.
import { createConnection, ProposedFeatures, TextDocumentSyncKind } from 'vscode-languageserver/node'

const connection = createConnection(ProposedFeatures.all)
const start = { line: 0, character: 0 }
const diagnostics = [{ range: { start, end: { line: 0, character: 1 } }, message: 'One fixed finding.' }]

connection.onInitialize(() => ({
  capabilities: { textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental } },
}))
connection.onDidOpenTextDocument(
  ({ textDocument: { uri, version } }) => void connection.sendDiagnostics({ uri, version, diagnostics }),
)
connection.onDidChangeTextDocument(
  ({ textDocument: { uri, version } }) => void connection.sendDiagnostics({ uri, version, diagnostics }),
)
connection.listen()
