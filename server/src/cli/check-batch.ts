import type { JobJson } from '../areas/common/command-json.ts'
import { allChecks } from '../areas/index.ts'
import type { Finding } from '../checks/check.ts'
import { Checker } from '../checks/run.ts'
import { Analysis } from '../job/analysis.ts'
import { type Document, hasSection, rangeOf, textOf } from '../job/document.ts'
import type { Refusal } from '../job/file-text.ts'
import { identityOf } from '../job/identity.ts'
import type { Place } from '../job/model.ts'
import { jobJson } from './job-json.ts'
import { type Counts, linesOf, more, report } from './report.ts'
import { type Listed, type OpenJob, openJob } from './run.ts'
import type { FindingJson } from './schemas.ts'
import type { Line } from './terminal.ts'

/** More findings of one file than this are counted, not shown: nobody reads them at one go. JSON has them all. */
const maxShown = 100

/** What was found in some files: with `text` asked for, the reports themselves and how many findings there are; else the findings. */
export interface Checked {
  readonly files: readonly string[]
  readonly jobs: readonly JobJson[]
  readonly findings: readonly FindingJson[]
  readonly counts: Counts
  readonly report: readonly Line[]
  /** Checks that could not run, in words. */
  readonly faults: readonly string[]
  /** Some files or folders could not be read. */
  readonly unread: boolean
}

export interface Batch {
  readonly format: 'text' | 'json'
  readonly today: string
  readonly paths: readonly Listed[]
  /** What was read of standard input, where one of the paths stands for it. */
  readonly stdin?: string | Refusal | undefined
}

/** Checks files one after the other. `opened` keeps what they use from one batch to the next. */
export function checkBatch(
  { paths, stdin, format, today }: Batch,
  opened: Map<string, Document | undefined>,
): Checked {
  const files: string[] = []
  const jobs: JobJson[] = []
  const findings: FindingJson[] = []
  const faults: string[] = []
  const counts = { error: 0, warning: 0, information: 0 }
  const reports: Line[] = []
  const onFault = (id: string, error: unknown) => faults.push(`The check ${id} crashed: ${error}`)
  let unread = false
  for (const listed of paths) {
    const job = openJob(listed, { stdin, opened })
    const { refusal } = job.file.document
    const shown = job.shown(job.file)
    const isFolder = refusal?.type === 'file-unreadable' && refusal.isFolder
    if (!isFolder) files.push(shown)
    unread ||= refusal !== undefined
    const analysis = new Analysis()
    analysis.begin()
    const found = new Checker(analysis, allChecks).check(job.file, { today, onFault })
    const identity = identityOf(analysis.blocks(job.file))
    if (identity) jobs.push({ file: shown, ...jobJson(identity) })
    for (const { severity } of found) counts[severity] += 1
    if (format === 'json') {
      for (const finding of found) findings.push(asJson(finding, job))
      continue
    }
    const lines = refusal ? [] : linesOf(textOf(job.file.document))
    for (const finding of found.slice(0, maxShown)) reports.push(...report(asJson(finding, job), lines))
    if (found.length > maxShown) reports.push(more(found.length - maxShown, shown), '')
  }
  return { files, jobs, findings, counts, report: reports, faults, unread }
}

function asJson(finding: Finding, job: OpenJob): FindingJson {
  const { check: id, severity, message, detail, todo, found, limit, source, assumptions, related } = finding
  return {
    ...placed(finding.at, job),
    severity,
    check: id,
    message,
    ...(detail !== undefined && { detail }),
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
