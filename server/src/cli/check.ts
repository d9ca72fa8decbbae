import type { Finding } from '../checks/check.ts'
import { allChecks } from '../checks/index.ts'
import { Checker } from '../checks/run.ts'
import { Analysis } from '../job/analysis.ts'
import { type Document, hasSection, rangeOf } from '../job/document.ts'
import type { Place } from '../job/model.ts'
import { type Colours, linesOf, more, report, summary } from './report.ts'
import { jobFiles, type OpenJob, openJob } from './run.ts'
import type { CheckJson, FindingJson } from './schemas.ts'

interface Options {
  readonly format: 'text' | 'json'
  readonly today: string
}

/** More findings of one file than this are counted, not shown: nobody reads them at one go. JSON has them all. */
const mostShown = 100

/** On a terminal, unless the user wants none (https://no-color.org); where there is none, when the user wants them all the same. */
function coloured(): boolean {
  const { NO_COLOR, FORCE_COLOR } = process.env
  if (NO_COLOR) return false
  return FORCE_COLOR ? FORCE_COLOR !== '0' : process.stdout.isTTY === true
}

/** `check`: every finding of every file; the exit code says whether there are errors, or checks that could not run. */
export async function check(paths: readonly string[], { format, today }: Options): Promise<void> {
  const colours: Colours = (await import('picocolors')).default.createColors(coloured())
  const files: string[] = []
  const findings: FindingJson[] = []
  const opened = new Map<string, Document | undefined>()
  let failed = false
  const onFault = (id: string, error: unknown) => {
    failed = true
    console.error(`The check ${id} could not run: ${error}`)
  }
  for (const path of jobFiles(paths)) {
    const job = openJob(path, opened)
    files.push(job.shown(job.file))
    const analysis = new Analysis()
    analysis.begin()
    const checked = new Checker(analysis, allChecks).check(job.file, { today, onFault })
    const found = checked.map((finding) => asJson(finding, job))
    for (const finding of found) findings.push(finding) // noise has more findings than a call takes arguments
    if (format === 'json') continue
    const lines = linesOf(job.text)
    for (const finding of found.slice(0, mostShown)) console.log(`${report(finding, lines, colours)}\n`)
    if (found.length > mostShown) console.log(`${more(found.length - mostShown, job.shown(job.file))}\n`)
  }
  const json: CheckJson = { version: 1, files, findings }
  console.log(format === 'json' ? JSON.stringify(json, null, 2) : summary(json, colours))
  process.exitCode = failed ? 2 : findings.some(({ severity }) => severity === 'error') ? 1 : 0
}

function asJson(finding: Finding, job: OpenJob): FindingJson {
  const { check: id, severity, message, todo, found, limit, source, assumptions, related } = finding
  return {
    ...placed(finding.at, job),
    severity,
    check: id,
    message,
    todo,
    ...(found !== undefined && { found }),
    ...(limit !== undefined && { limit }),
    source: source.text,
    ...(assumptions && { assumptions: [...assumptions] }),
    ...(related && { related: related.map((one) => ({ ...placed(one.at, job), message: one.message })) }),
  }
}

/** A place in the file itself or in one it uses. */
function placed(at: Place, job: OpenJob): Pick<FindingJson, 'file' | 'range'> {
  const holder =
    [job.file, ...job.file.used].find(({ document }) => hasSection(document, at.section)) ?? job.file
  return { file: job.shown(holder), range: rangeOf(holder.document, at) }
}
