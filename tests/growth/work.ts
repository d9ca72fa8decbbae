// node FLAGS work.ts [NAME], with the flags of growth.test.ts: what each input, or those whose name begins so, costs at growing sizes, as JSON. By itself, since V8 counts only in functions that it read after it was asked to.
import { Session } from 'node:inspector/promises'
import { usualActions } from './input.ts'
import { inputs } from './inputs.ts'

/** What was done: characters of our code that were passed, and bytes taken from the heap. */
export interface Work {
  readonly steps: number
  readonly bytes: number
}

const session = new Session()
session.connect()
await session.post('Profiler.enable')
await session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true })
// Only now: what is imported before would not be counted.
const { actions } = await import('./actions.ts')

/** Characters of our code that were passed since it was asked last. V8 tells a range apart only where its count is another than that of the range
 * around it, so that the number of ranges says nothing. */
const stepsSince = async (): Promise<number> => {
  const { result } = await session.post('Profiler.takePreciseCoverage')
  let steps = 0
  for (const { url, functions } of result) {
    if (!url.includes('/server/src/')) continue
    for (const { ranges } of functions) {
      const around: typeof ranges = []
      for (const range of ranges) {
        while (around.length > 0 && (around.at(-1)?.endOffset ?? 0) <= range.startOffset) around.pop()
        steps += (range.endOffset - range.startOffset) * (range.count - (around.at(-1)?.count ?? 0))
        around.push(range)
      }
    }
  }
  return steps
}

const heapUsed = (): number => process.memoryUsage().heapUsed

/** Does one after the other, and counts each. So that nothing is given back meanwhile, the part of the heap for what is new has room for all. */
async function worksOf(all: readonly (() => void | Promise<void>)[]): Promise<readonly Work[]> {
  await stepsSince()
  const works: Work[] = []
  for (const done of all) {
    gc?.({ type: 'minor' })
    const before = heapUsed()
    await done()
    const bytes = heapUsed() - before
    works.push({ steps: await stepsSince(), bytes })
  }
  return works
}

const wanted = process.argv[2] ?? ''
const works: Record<string, readonly Work[]> = {}
for (const [input, { text, from, by = usualActions }] of Object.entries(inputs))
  for (const action of by) {
    const name = `${input}: ${action}`
    if (!name.startsWith(wanted)) continue
    const ready = (size: number) => actions[action](text(size))
    await (await ready(from))() // so that what is made once is made
    works[name] = await worksOf([await ready(from), await ready(2 * from), await ready(4 * from)])
  }
console.log(JSON.stringify(works))
