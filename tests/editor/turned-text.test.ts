// A text direction mark in a job turns the figures behind it round: 0.26 would read 62.0 (Unicode Standard Annex 9, section 2). Nothing that an
// editor shows of a job holds one, nor a control character.
import { afterAll, beforeAll, expect, it } from 'vitest'
import type { CodeAction, CodeLens } from 'vscode-languageserver'
import { planRequest } from '../../server/src/editor/client-requests.ts'
import { startProcess } from './client.ts'

const turning = '\u202Eevil\u2066\u009B\u001B'
const uri = 'file:///jobs/a.wright'
const text = `job "${turning}" { vessel: "${turning}"  revision: "${turning}" }
drive main {
  shaft { diameter: ${turning} }
  coupling { flange-diameter: 125 mm  gap-variation: max 0.10 mm [maker "${turning}"] }
  bed { thread: "${turning}" }
  reading dry-1 { taken: 2026-03-04  gauge: 0.02 mm  gaps: top 1.2 mm, starboard 1.1 mm, bottom 1 mm, port 1.1 mm }
  reading dry${turning} { taken: 2026-03-05  gauge: 0.02 mm  gaps: top 1.2 mm, starboard 1.1 mm, bottom 1 mm, port 1.1 mm }
}
`

let served: Awaited<ReturnType<typeof startProcess>>
beforeAll(async () => {
  served = await startProcess()
})
afterAll(() => served.stop())

it('findings, fixes, lenses and plans turn nothing round', async () => {
  const { client } = served
  client.open(uri, text)
  const { diagnostics } = await client.published(uri)
  const ask = <T>(method: string, params: object) =>
    client.connection.sendRequest<T>(method, { textDocument: { uri }, ...params })
  const range = { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } }
  const actions = await ask<CodeAction[]>('textDocument/codeAction', { range, context: { diagnostics } })
  const lenses = await ask<CodeLens[]>('textDocument/codeLens', {})
  const plan = await ask<{ text: string }>(planRequest, { path: 'main' })
  const shown = [
    diagnostics.map(({ message }) => message),
    actions.map(({ title }) => title),
    lenses.map(({ command }) => command?.title ?? ''),
    [plan.text],
  ]
  for (const words of shown) {
    expect(words.length).toBeGreaterThan(0)
    expect(words.join('\n')).not.toMatch(/(?!\n)\p{Cc}|\p{Bidi_Control}/u)
  }
  expect(diagnostics.map(({ message }) => message).join()).toContain('\uFFFDevil\uFFFD\uFFFD\u241B')
})
