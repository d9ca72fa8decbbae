import { allChecks } from '../checks/index.ts'
import { trustedCorrection } from '../checks/plan-trust.ts'
import { Checker } from '../checks/run.ts'
import { today } from '../editor/today.ts'
import { Analysis } from '../job/analysis.ts'
import { lookupFrom } from '../job/lookup.ts'
import { type Block, childrenOf } from '../job/model.ts'
import { logUpTo } from '../plans/alignment-log.ts'
import { lastReading } from '../plans/alignment-moves.ts'
import { logJson } from '../plans/log-json.ts'
import { planJson } from '../plans/plan-json.ts'
import { planText } from '../plans/plan-text.ts'
import { CannotRun, openJob } from './run.ts'

interface Options {
  readonly drive?: string
  readonly reading?: string
  readonly format: 'text' | 'json'
}

const names = (blocks: readonly Block[]): string => blocks.map(({ name }) => name ?? '').join(', ')

/** Says on the error output why there is no plan; the command then ends with 1. */
function refuse(words: string): undefined {
  console.error(words)
  process.exitCode = 1
}

/** The block of that name; where none is named, the only one. Undefined, and said, where several have the name. */
function pick(blocks: readonly Block[], kind: string, name: string | undefined): Block | undefined {
  const alike = name === undefined ? 0 : blocks.filter((block) => block.name === name).length
  if (alike > 1)
    return refuse(
      `There are ${alike} ${kind}s called ${name}: which one is meant cannot be told. Give each a name of its own.`,
    )
  const found =
    name === undefined
      ? blocks.length === 1
        ? blocks[0]
        : undefined
      : blocks.find((block) => block.name === name)
  if (found) return found
  if (blocks.length === 0) throw new CannotRun(`The job has no ${kind}.`)
  throw new CannotRun(
    name === undefined
      ? `The job has several ${kind}s: say which with --${kind} (${names(blocks)}).`
      : `There is no ${kind} called ${name}; there is ${names(blocks)}.`,
  )
}

/** A brace that is missing puts a block where it is not looked for. */
const mayHide = ({ section }: Block): string =>
  section.parsed.problems.length === 0
    ? ''
    : ' Its text has faults that may hide one: `shaftwright check` names them.'

/** `plan`: the moves of each foot. Ends with 1 when the reading cannot be worked out, or something it depends on is written wrong. */
export function plan(path: string, options: Options): void {
  const { file } = openJob(path)
  const analysis = new Analysis()
  analysis.begin()
  const drives = analysis.blocks(file).filter(({ kind }) => kind === 'drive')
  const drive = pick(drives, 'drive', options.drive)
  if (!drive) return
  const last = lastReading(drive)
  if (!last) throw new CannotRun(`The drive ${drive.name ?? ''} has no reading.${mayHide(drive)}`)
  const reading =
    options.reading === undefined ? last : pick(childrenOf(drive, 'reading'), 'reading', options.reading)
  if (!reading) return
  const lookup = lookupFrom(reading, analysis.scope(file))
  const findings = new Checker(analysis, allChecks).check(file, { today: today() })
  const outcome = trustedCorrection(reading, lookup, { file, findings })
  if (!outcome.ok) {
    refuse(`${reading.path}: ${outcome.fault.words}`)
    return
  }
  if (outcome.value.errors) process.exitCode = 1
  const log = logUpTo(reading, lookup)
  console.log(
    options.format === 'json'
      ? JSON.stringify({ ...planJson(outcome.value, lookup.system), log: logJson(log) }, null, 2)
      : planText(outcome.value, log, lookup.system),
  )
}
