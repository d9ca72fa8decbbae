// Ten editors gone mad on one server, for as long as you like: everyone is answered, and what the server holds does not grow.
import { type Fault, fuzzProtocol, serveFuzzed } from './protocol.ts'
import type { Memory } from './served.ts'

export interface Crowd {
  readonly faults: readonly Fault[]
  /** After each round, with every text closed. */
  readonly held: readonly Memory[]
}

interface Options {
  readonly seed: number
  readonly editors: number
  /** Of each editor in each round. */
  readonly steps: number
  /** Whether another round is wanted after so many. */
  readonly more: (rounds: number) => boolean
}

export async function fuzzCrowd({ seed, editors, steps, more }: Options): Promise<Crowd> {
  const pulls = seed % 2 === 0
  const server = await serveFuzzed(pulls, null)
  const faults: Fault[] = []
  const held: Memory[] = []
  for (let round = 0; faults.length === 0 && more(round); round++) {
    const found = await Promise.all(
      Array.from({ length: editors }, (_, i) =>
        fuzzProtocol({
          seed: seed + round * editors + i,
          steps,
          among: { server, pulls, number: i + 1 },
        }),
      ),
    )
    for (const some of found) faults.push(...some)
    if (server.ended()) break
    // What was cancelled or refused last is answered before this is.
    await server.client.connection.sendRequest('workspace/symbol', { query: '' })
    held.push(await server.memory())
  }
  if (server.ended()) return { faults, held }
  if (faults.length > 0) await server.kill()
  else await server.stop()
  return { faults, held }
}

/** How much more is held in the last rounds than at first, of one. The first round warms up. */
export function growthOf(held: readonly Memory[]): number {
  const heaps = held.map(({ heap }) => heap)
  return Math.min(...heaps.slice(-2)) / Math.min(...heaps.slice(0, 2))
}
