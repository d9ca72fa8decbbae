import { expect, it, vi } from 'vitest'
import { codes, startHere } from './client.ts'

it('a host that has to ask for its files is waited for, and nothing is said of a file before it is whole', async () => {
  const waiting: (() => void)[] = []
  const stock = 'shaft stock { diameter: 35 mm }\n'
  const client = await startHere({
    read: (uri) =>
      new Promise((done) => {
        waiting.push(() => done(uri.endsWith('/stock.wright') ? stock : undefined))
      }),
    list: async () => [],
    today: () => '2026-03-04',
  })
  const come = () => {
    for (const one of waiting.splice(0)) one()
  }
  const [job, other] = ['file:///jobs/boat.wright', 'file:///jobs/other.wright'] as const
  const textDocument = { uri: job }
  client.open(job, 'use "stock.wright"\ndrive d { shaft { like: stock } }\n')
  let said = false
  const first = client.published(job).finally(() => {
    said = true
  })
  for (const line of [0, 1])
    await client.connection.sendRequest('textDocument/hover', {
      textDocument,
      position: { line, character: 1 },
    })
  expect([waiting.length, said]).toEqual([1, false])
  come()
  expect(codes((await first).diagnostics)).not.toContain('job/unresolved')

  client.open(other, 'use "none.wright"\n')
  await vi.waitFor(() => expect(waiting.length).toBeGreaterThan(0))
  const second = client.published(other)
  const asking = setInterval(come)
  expect(codes((await second).diagnostics)).toContain('job/file-not-found')
  clearInterval(asking)
  expect(client.log).toEqual([])
})
