import picocolors from 'picocolors'
import type { Document } from '../job/document.ts'
import { type Batch, type Checked, checkBatch } from './check-batch.ts'
import { severities, summary } from './report.ts'
import { CannotRun, jobFiles } from './run.ts'
import type { CheckJson, FindingJson } from './schemas.ts'
import { checkInThreads, perBatch } from './threads.ts'

/** On a terminal, unless the user wants none (https://no-color.org); where there is none, when the user wants them all the same. */
function coloured(): boolean {
  const { NO_COLOR, FORCE_COLOR } = process.env
  if (NO_COLOR) return false
  return FORCE_COLOR ? FORCE_COLOR !== '0' : process.stdout.isTTY === true
}

/** `check`: every finding of every file; the exit code says whether there are errors, or checks that could not run. */
export async function check(
  given: readonly string[],
  options: Pick<Batch, 'format' | 'today'>,
): Promise<void> {
  const paths = jobFiles(given)
  const batch = { ...options, coloured: coloured() }
  const files: string[] = []
  const findings: FindingJson[] = []
  const total = { error: 0, warning: 0, information: 0 }
  let failed = false
  for await (const checked of checkAll(paths, batch)) {
    for (const fault of checked.faults) console.error(fault)
    if (checked.report) console.log(checked.report)
    for (const file of checked.files) files.push(file)
    for (const finding of checked.findings) findings.push(finding) // noise has more findings than a call takes arguments
    for (const severity of severities) total[severity] += checked.counts[severity]
    failed ||= checked.faults.length > 0
    if (checked.cannot !== undefined) throw new CannotRun(checked.cannot)
  }
  const json: CheckJson = { version: 1, files, findings }
  console.log(
    options.format === 'json'
      ? JSON.stringify(json, null, 2)
      : summary(files.length, total, picocolors.createColors(batch.coloured)),
  )
  process.exitCode = failed ? 2 : total.error > 0 ? 1 : 0
}

/** An archive is worth starting other threads for; a few files are not. */
const checkAll = (
  paths: readonly string[],
  batch: Omit<Batch, 'paths'>,
): AsyncIterable<Checked> | Iterable<Checked> =>
  paths.length < 4 * perBatch ? oneByOne(paths, batch) : checkInThreads(paths, batch)

function* oneByOne(paths: readonly string[], batch: Omit<Batch, 'paths'>): Generator<Checked> {
  const opened = new Map<string, Document | undefined>()
  for (const path of paths) yield checkBatch({ ...batch, paths: [path] }, opened)
}
