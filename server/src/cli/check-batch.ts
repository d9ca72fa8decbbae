import picocolors from 'picocolors'
import type { Finding } from '../checks/check.ts'
import { allChecks } from '../checks/index.ts'
import { Checker } from '../checks/run.ts'
import { Analysis } from '../job/analysis.ts'
import { type Document, hasSection, rangeOf } from '../job/document.ts'
import type { Place } from '../job/model.ts'
import { type Counts, linesOf, more, report } from './report.ts'
import { CannotRun, type OpenJob, openJob } from './run.ts'
import type { FindingJson } from './schemas.ts'

/** More findings of one file than this are counted, not shown: nobody reads them at one go. JSON has them all. */
const mostShown = 100

/** What was found in some files: with `text` asked for, the reports themselves and how many findings there are; else the findings. */
export interface Checked {
  readonly files: readonly string[]
  readonly findings: readonly FindingJson[]
  readonly counts: Counts
  readonly report: string
  /** Checks that could not run, in words. */
  readonly faults: readonly string[]
  /** Why the files after these could not be checked, where they could not. */
  readonly cannot?: string
}

export interface Batch {
  readonly format: 'text' | 'json'
  readonly today: string
  readonly paths: readonly string[]
  readonly coloured: boolean
}

/** Checks files one after the other. `opened` keeps what they use from one batch to the next. */
export function checkBatch(
  { paths, format, today, coloured: colour }: Batch,
  opened: Map<string, Document | undefined>,
): Checked {
  const colours = picocolors.createColors(colour)
  const files: string[] = []
  const findings: FindingJson[] = []
  const faults: string[] = []
  const counts = { error: 0, warning: 0, information: 0 }
  const reports: string[] = []
  const onFault = (id: string, error: unknown) => faults.push(`The check ${id} could not run: ${error}`)
  const done = (cannot?: string): Checked => ({
    files,
    findings,
    counts,
    report: reports.join('\n'),
    faults,
    ...(cannot !== undefined && { cannot }),
  })
  for (const path of paths) {
    try {
      const job = openJob(path, opened)
      const shown = job.shown(job.file)
      files.push(shown)
      const analysis = new Analysis()
      analysis.begin()
      const found = new Checker(analysis, allChecks).check(job.file, { today, onFault })
      for (const { severity } of found) counts[severity] += 1
      if (format === 'json') {
        for (const finding of found) findings.push(asJson(finding, job))
        continue
      }
      const lines = linesOf(job.text)
      for (const finding of found.slice(0, mostShown))
        reports.push(`${report(asJson(finding, job), lines, colours)}\n`)
      if (found.length > mostShown) reports.push(`${more(found.length - mostShown, shown)}\n`)
    } catch (error) {
      if (error instanceof CannotRun) return done(error.message)
      throw error
    }
  }
  return done()
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
