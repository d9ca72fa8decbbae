// npm run fuzz: much of what the tests do a little of, for a night. --seed says where it starts; what it finds is found again with the same seed.
import { parseArgs } from 'node:util'
import fc from 'fast-check'
import { measureKept } from '../bench/memory.ts'
import { fuzzCrowd, growthOf } from './crowd.ts'
import { laws } from './laws.ts'
import { fuzzProtocol } from './protocol.ts'
import { measureReopened } from './reopened.ts'
import { wholeWorkspace } from './whole-workspace.ts'

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: '1' },
    editors: { type: 'string', default: '50' },
    steps: { type: 'string', default: '2000' },
    texts: { type: 'string', default: '10000' },
    edits: { type: 'string', default: '100000' },
    crowd: { type: 'string', default: '10' },
    minutes: { type: 'string', default: '10' },
    reopened: { type: 'string', default: '1000' },
  },
})
const [seed, editors, steps, texts, edits, crowd, minutes, reopened] = [
  values.seed,
  values.editors,
  values.steps,
  values.texts,
  values.edits,
  values.crowd,
  values.minutes,
  values.reopened,
].map(Number) as [number, number, number, number, number, number, number, number]
let faults = 0
const failed = (words: string): void => {
  faults += 1
  console.error(words)
}

for (const [name, law] of Object.entries(laws)) {
  const outcome = await fc.check(law, { seed, numRuns: texts })
  if (outcome.failed) failed(`${name}: ${fc.stringify(outcome.counterexample)}\n${outcome.errorInstance}`)
  else console.log(`${name}: ${outcome.numRuns} texts`)
}

const folders = await fc.check(wholeWorkspace, { seed, numRuns: Math.ceil(texts / 20) })
if (folders.failed) failed(`whole workspace: ${folders.counterexample}\n${folders.errorInstance}`)
else console.log(`a whole workspace is answered as by a full read: ${folders.numRuns} folders`)

for (let editor = seed; editor < seed + editors; editor++) {
  const found = await fuzzProtocol({ seed: editor, steps, large: true })
  for (const fault of found) failed(`--seed ${fault.seed}, step ${fault.step}: ${fault.words}`)
  if (found.length === 0) console.log(`editor ${editor}: ${steps} steps`)
}

if (edits > 0) {
  const early = Math.min(1000, edits)
  const [before, after] = await measureKept({ seed, looks: [early, edits] })
  const ratio = (after?.memory.heap ?? Number.NaN) / (before?.memory.heap ?? Number.NaN)
  const words = `live heap after ${edits} edits: ${ratio.toFixed(2)} × that after ${early}`
  if (ratio <= 1.3 || edits <= early) console.log(words)
  else failed(words)
}
if (crowd > 0 && minutes > 0) {
  const end = Date.now() + minutes * 60_000
  // Four rounds at least: two to compare with two.
  const more = (rounds: number) => rounds < 4 || Date.now() < end
  const { faults: found, held } = await fuzzCrowd({ seed, editors: crowd, steps: 200, more })
  for (const fault of found) failed(`--seed ${fault.seed}, step ${fault.step}: ${fault.words}`)
  const ratio = growthOf(held)
  const words = `live heap after ${held.length} rounds of ${crowd} editors on one server: ${ratio.toFixed(2)} × that after 2`
  if (ratio <= 1.3) console.log(words)
  else failed(words)
}

if (reopened > 0) {
  const early = Math.min(100, reopened)
  const [before, after] = await measureReopened(10, [early, reopened])
  const ratio = (after?.heap ?? Number.NaN) / (before?.heap ?? Number.NaN)
  const words = `live heap after 10 texts were opened and closed ${reopened} times: ${ratio.toFixed(2)} × that after ${early}`
  if (ratio <= 1.1 || reopened <= early) console.log(words)
  else failed(words)
}
process.exitCode = faults > 0 ? 1 : 0
