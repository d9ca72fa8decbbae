import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll, expect, it } from 'vitest'
import type { FullDocumentDiagnosticReport, WorkspaceDiagnosticReport } from 'vscode-languageserver/node'
import { largestFile } from '../../server/src/job/file-text.ts'
import { codes, startProcess } from './client.ts'

const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'shaftwright-'))
afterAll(() => fs.rmSync(folder, { recursive: true, force: true }))
const uriOf = (name: string): string => pathToFileURL(path.join(folder, name)).href

it('a file that cannot be read is a finding, on disk and open, and the server goes on', async () => {
  fs.writeFileSync(path.join(folder, 'a.wright'), 'use "large.wright"\nnonsense\n')
  fs.writeFileSync(path.join(folder, 'latin.wright'), Buffer.from([0x63, 0xe9]))
  fs.writeFileSync(path.join(folder, 'large.wright'), '')
  fs.truncateSync(path.join(folder, 'large.wright'), largestFile + 1)
  const { client, stop } = await startProcess({
    workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'jobs' }],
    capabilities: {},
  })
  const { connection } = client
  const { items }: WorkspaceDiagnosticReport = await connection.sendRequest('workspace/diagnostic', {
    previousResultIds: [],
  })
  const found = items.flatMap((report) =>
    codes((report as FullDocumentDiagnosticReport).items).map(
      (code) => `${path.basename(report.uri)} ${code}`,
    ),
  )
  expect(found.sort()).toEqual([
    'a.wright job/file-too-large',
    'a.wright job/line-not-understood',
    'large.wright job/file-too-large',
    'latin.wright job/file-not-utf8',
  ])

  const uri = uriOf('open.wright')
  const textDocument = { uri }
  const line = 'nonsense\n'
  const lines = Math.ceil(largestFile / line.length) + 1
  client.open(uri, line.repeat(lines))
  expect(codes((await client.published(uri)).diagnostics)).toEqual(['job/file-too-large'])
  const range = { start: { line: 5, character: 0 }, end: { line: 7, character: 3 } }
  for (const method of [
    'formatting',
    'rangeFormatting',
    'documentSymbol',
    'foldingRange',
    'codeAction',
    'hover',
    'completion',
    'inlayHint',
    'codeLens',
    'semanticTokens/full',
    'documentHighlight',
    'references',
  ])
    await connection.sendRequest(`textDocument/${method}`, {
      textDocument,
      range,
      position: range.start,
      options: { tabSize: 2, insertSpaces: true },
      context: { diagnostics: [], includeDeclaration: true },
    })
  const formatted = await connection.sendRequest('textDocument/formatting', {
    textDocument,
    options: { tabSize: 2, insertSpaces: true },
  })
  expect(formatted).toEqual([])

  // All but two lines are deleted, and what is left is checked.
  await connection.sendNotification('textDocument/didChange', {
    textDocument: { uri, version: 2 },
    contentChanges: [
      { range: { start: { line: 1, character: 0 }, end: { line: lines - 1, character: 0 } }, text: '' },
    ],
  })
  const { diagnostics } = await client.published(uri, ({ version }) => version === 2)
  expect(codes(diagnostics)).toEqual(['job/line-not-understood', 'job/line-not-understood'])
  expect(client.log).toEqual([])
  expect(await stop()).toBe(0)
})
