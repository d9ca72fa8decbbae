import type { JobJson } from '../areas/common/command-json.ts'
import type { Document } from '../job/document.ts'
import { type Batch, type Checked, checkBatch } from './check-batch.ts'
import { severities, summary } from './report.ts'
import { jobFiles, type Listed, readStdin } from './run.ts'
import type { CheckJson, FindingJson } from './schemas.ts'
import { print, printError, printJson } from './terminal.ts'
import { checkInThreads, perBatch } from './threads.ts'
import { tool } from './tool.ts'

interface Options extends Pick<Batch, 'format' | 'today'> {
  /** More warnings than this count as an error. */
  readonly maxWarnings?: number
}

/** `check`: every finding of every file. The exit code says whether there are errors, too many warnings, or something that could not be read or run. */
export async function check(
  given: readonly string[],
  { maxWarnings = Number.POSITIVE_INFINITY, ...options }: Options,
): Promise<void> {
  const paths = jobFiles(given)
  const batch = { ...options, stdin: await readStdin(given) }
  const files: string[] = []
  const jobs: JobJson[] = []
  const findings: FindingJson[] = []
  const total = { error: 0, warning: 0, information: 0 }
  let failed = false
  for await (const checked of checkAll(paths, batch)) {
    printError(checked.faults)
    print(checked.report)
    for (const file of checked.files) files.push(file)
    for (const job of checked.jobs) jobs.push(job)
    for (const finding of checked.findings) findings.push(finding) // noise has more findings than a call takes arguments
    for (const severity of severities) total[severity] += checked.counts[severity]
    failed ||= checked.faults.length > 0 || checked.unread
  }
  const json: CheckJson = { version: 1, tool, files, jobs, findings }
  if (options.format === 'json') printJson(json)
  else print([summary(files.length, total)])
  const tooMany = total.warning > maxWarnings
  if (tooMany) printError([`Too many warnings: ${total.warning}, but at most ${maxWarnings} are allowed.`])
  process.exitCode = failed ? 2 : total.error > 0 || tooMany ? 1 : 0
}

/** An archive is worth starting other threads for; a few files are not. */
const checkAll = (
  paths: readonly Listed[],
  batch: Omit<Batch, 'paths'>,
): AsyncIterable<Checked> | Iterable<Checked> =>
  paths.length < 4 * perBatch ? oneByOne(paths, batch) : checkInThreads(paths, batch)

function* oneByOne(paths: readonly Listed[], batch: Omit<Batch, 'paths'>): Generator<Checked> {
  const opened = new Map<string, Document | undefined>()
  for (const path of paths) yield checkBatch({ ...batch, paths: [path] }, opened)
}
