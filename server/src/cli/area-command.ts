import { type AreaCommand, CannotRun } from '../areas/common/command.ts'
import { allChecks } from '../areas/index.ts'
import { refusalWords } from '../checks/refusal-words.ts'
import { Checker } from '../checks/run.ts'
import { Analysis } from '../job/analysis.ts'
import { identityOf } from '../job/identity.ts'
import { csvOf } from './csv.ts'
import { jobJson } from './job-json.ts'
import { openJob, readStdin } from './run.ts'
import { print, printFile, printJson } from './terminal.ts'
import { tool } from './tool.ts'

type Options = Readonly<Record<string, string | undefined>> & {
  readonly format: 'text' | 'json' | 'csv'
  readonly today: string
}

/** Runs a command of an area on a job file, and prints what it works out. */
export async function runAreaCommand(
  command: AreaCommand,
  path: string,
  { format, today, ...options }: Options,
): Promise<void> {
  const opened = openJob({ path }, { stdin: await readStdin([path]) })
  const { file } = opened
  const shown = opened.shown(file)
  const { refusal } = file.document
  if (refusal) throw new CannotRun(refusalWords(shown, refusal))
  const analysis = new Analysis()
  analysis.begin()
  const findings = new Checker(analysis, allChecks).check(file, { today })
  const identity = identityOf(analysis.blocks(file))
  const head = { tool, file: shown, job: identity ? jobJson(identity) : null, date: today }
  const { text, json, csv = [], exitCode } = command.run({ file, analysis, findings, head }, options)
  process.exitCode = exitCode
  if (format === 'json') printJson(json)
  else if (format === 'csv') printFile(csvOf(csv))
  else print(text.split('\n'))
}
