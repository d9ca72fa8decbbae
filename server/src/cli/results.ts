import { allFigures, areas } from '../areas/index.ts'
import { refusalWords } from '../checks/refusal-words.ts'
import type { Document } from '../job/document.ts'
import { type FileResults, resultsOfFile } from './file-results.ts'
import { resultsCsv } from './results-csv.ts'
import { resultsJson } from './results-json.ts'
import { resultsText } from './results-text.ts'
import { jobFiles, openJob, readStdin } from './run.ts'
import { print, printError, printFile, printJson } from './terminal.ts'

interface Options {
  /** Only the figures of this area. */
  readonly area?: string
  readonly format: 'text' | 'json' | 'csv'
  readonly today: string
}

/** `results`: what every figure of every file comes to. Ends with 2 where a file cannot be read. */
export async function results(
  given: readonly string[],
  { area: name, format, today }: Options,
): Promise<void> {
  const figures = areas.find((area) => area.name === name)?.figures ?? allFigures
  const paths = jobFiles(given)
  const stdin = await readStdin(given)
  const opened = new Map<string, Document | undefined>()
  const found: FileResults[] = []
  for (const listed of paths) {
    const job = openJob(listed, { stdin, opened })
    const { refusal } = job.file.document
    if (refusal) {
      printError([refusalWords(job.shown(job.file), refusal)])
      process.exitCode = 2
      continue
    }
    const ofFile = resultsOfFile(job, figures, today)
    if (format === 'text') print(resultsText(ofFile))
    else found.push(ofFile)
  }
  if (format === 'json') printJson(resultsJson(found, today))
  if (format === 'csv') printFile(resultsCsv(resultsJson(found, today)))
}
