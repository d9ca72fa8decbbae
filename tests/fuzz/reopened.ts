// Ten texts opened and closed over and over: nothing of them may stay.
import { jobOf } from '../bench/jobs.ts'
import { type Memory, serve } from './served.ts'

/** Opens and closes so many texts again and again, and looks at what is held after each of these many times. */
export async function measureReopened(texts: number, looks: readonly number[]): Promise<readonly Memory[]> {
  const server = await serve()
  const { connection, open, published } = server.client
  const text = jobOf(1)
  const uris = Array.from({ length: texts }, (_, i) => `file:///reopened/boat-${i}.wright`)
  const held: Memory[] = []
  for (let time = 1; time <= (looks.at(-1) ?? 0); time++) {
    for (const uri of uris) open(uri, text.replace('Measure 1', `Measure ${time}`), time)
    await Promise.all(uris.map((uri) => published(uri, ({ version }) => version === time)))
    for (const uri of uris)
      void connection.sendNotification('textDocument/didClose', { textDocument: { uri } })
    if (!looks.includes(time)) continue
    await connection.sendRequest('workspace/symbol', { query: '' })
    held.push(await server.memory())
  }
  await server.stop()
  return held
}
