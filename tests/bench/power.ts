// npm run bench:power: how long the power table of a twin-screw job takes, from its text to the curve with endurance and range. Each time the pitch of
// both propellers is another, so that nothing is kept. The first time in the process counts: nothing is compiled yet.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { performance } from 'node:perf_hooks'
import { powerCurveOfFile } from '../../server/src/areas/propulsion/plans/power-curve.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { lookupFrom } from '../../server/src/store/store.ts'
import { spreadOf } from './samples.ts'

const examples = join(import.meta.dirname, '../../docs/examples')
const [text, parts] = ['twin-screw-ferry.wright', 'parts/drivetrain.wright'].map((path) =>
  readFileSync(join(examples, path), 'utf8'),
)
const library = openDocument(parts ?? '')
const analysis = new Analysis()

/** The table with this pitch, mm: how long the text takes to read, and the table to work out. */
function timed(pitch: number): { readonly reading: number; readonly table: number } {
  const start = performance.now()
  analysis.begin()
  const document = openDocument((text ?? '').replaceAll('360 mm', `${pitch} mm`))
  const file = linkFile('ferry.wright', document, () => library)
  const [block] = analysis.blocks(file)
  if (!block) throw new Error('no job')
  const read = performance.now()
  const curve = lookupFrom(block, { analysis, file }).ofFile(powerCurveOfFile)
  if (!curve.ok || curve.value.some(({ demand, drives }) => !demand || drives.length !== 2))
    throw new Error('no table of two drives')
  return { reading: read - start, table: performance.now() - read }
}

const ms = (value: number): string => `${value.toFixed(1)} ms`
const [first, ...rest] = Array.from({ length: 301 }, (_, i) => timed(330 + i / 10))
const warm = rest.slice(100)
const table = spreadOf(warm.map((one) => one.table))
const reading = spreadOf(warm.map((one) => one.reading))
console.log(
  `| twin-screw job | first in a process | p50 | p95 | goal |
| :-- | --: | --: | --: | --: |
| power table | ${ms(first?.table ?? Number.NaN)} | ${ms(table.p50)} | ${ms(table.p95)} | p50 < 20 ms: ${table.p50 < 20 ? 'met' : 'missed'} |
| reading the text before it | ${ms(first?.reading ?? Number.NaN)} | ${ms(reading.p50)} | ${ms(reading.p95)} | |`,
)
