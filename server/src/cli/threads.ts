import { availableParallelism } from 'node:os'
import { setFlagsFromString } from 'node:v8'
import { isMainThread, parentPort, Worker } from 'node:worker_threads'
import type { Document } from '../job/document.ts'
import { type Batch, type Checked, checkBatch } from './check-batch.ts'
import type { Listed } from './run.ts'

/** Files that go to a thread at a time. */
export const perBatch = 16

/** Somebody who checks one batch at a time. */
interface CheckingThread {
  readonly check: (batch: Batch) => Promise<Checked>
  readonly leave: () => unknown
}

/** Checks many files on all cores; what is found comes in the order of the files. */
export async function* checkInThreads(
  paths: readonly Listed[],
  batch: Omit<Batch, 'paths'>,
): AsyncGenerator<Checked> {
  collectEarly()
  const count = Math.ceil(paths.length / perBatch)
  const hands = Array.from({ length: Math.min(availableParallelism(), count) }, newThread)
  const results = new Map<number, Checked>()
  let given = 0
  let wake = () => {}
  let failure: { readonly error: unknown } | undefined
  const work = async ({ check }: CheckingThread): Promise<void> => {
    try {
      for (let i = given++; i < count && !failure; i = given++) {
        results.set(i, await check({ ...batch, paths: paths.slice(i * perBatch, (i + 1) * perBatch) }))
        wake()
      }
    } catch (error) {
      failure = { error }
      wake()
    }
  }
  for (const hand of hands) void work(hand)
  try {
    for (let i = 0; i < count; i++) {
      for (let next = results.get(i); ; next = results.get(i)) {
        if (failure) throw failure.error
        if (next) {
          results.delete(i)
          yield next
          break
        }
        await new Promise<void>((resolve) => {
          wake = resolve
        })
      }
    }
  } finally {
    for (const hand of hands) await hand.leave()
  }
}

/** A file leaves little behind: a small nursery, and collecting again once what is kept has doubled, keep the memory down and cost next to no time. */
const resourceLimits = { maxYoungGenerationSizeMb: 8 }
const collectEarly = () => setFlagsFromString('--heap-growing-percent=100')

function newThread(): CheckingThread {
  const thread = new Worker(new URL(import.meta.url), { resourceLimits })
  return {
    check: (batch) =>
      new Promise((resolve, reject) => {
        thread.once('error', reject)
        thread.once('message', (checked: Checked) => {
          thread.off('error', reject)
          resolve(checked)
        })
        thread.postMessage(batch)
      }),
    leave: () => thread.terminate(),
  }
}

/** The other side: the same file in a thread of its own. */
if (!isMainThread && parentPort) {
  const port = parentPort
  const opened = new Map<string, Document | undefined>()
  port.on('message', (batch: Batch) => port.postMessage(checkBatch(batch, opened)))
}
