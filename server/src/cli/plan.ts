import { trustedCorrection } from '../areas/alignment/plan-trust.ts'
import type { Correction } from '../areas/alignment/plans/correction.ts'
import { type LogEntry, logUpTo } from '../areas/alignment/plans/log.ts'
import { logJson } from '../areas/alignment/plans/log-json.ts'
import { lastReading } from '../areas/alignment/plans/moves.ts'
import { planHeading } from '../areas/alignment/plans/plan-heading.ts'
import { planJson } from '../areas/alignment/plans/plan-json.ts'
import { planText } from '../areas/alignment/plans/plan-text.ts'
import { allChecks } from '../areas/index.ts'
import { refusalWords } from '../checks/refusal-words.ts'
import { Checker } from '../checks/run.ts'
import { Analysis } from '../job/analysis.ts'
import { identityOf } from '../job/identity.ts'
import { type Block, childrenOf } from '../job/model.ts'
import type { View } from '../job/per-section.ts'
import type { UnitSystem } from '../quantity/kinds.ts'
import { lookupFrom } from '../store/store.ts'
import { harmless } from '../syntax/harmless.ts'
import { CannotRun } from './cannot-run.ts'
import { jobJson } from './job-json.ts'
import { openJob, readStdin } from './run.ts'
import type { PlansJson } from './schemas.ts'
import { print, printJson } from './terminal.ts'
import { tool } from './tool.ts'

interface Options {
  readonly drive?: string
  readonly reading?: string
  readonly format: 'text' | 'json'
  readonly today: string
}

/** The plan of a drive, or why there is none. */
type Planned = { readonly drive: string } & (
  | { readonly reading: string | null; readonly fault: string }
  | {
      readonly fault: null
      readonly correction: Correction
      readonly log: readonly LogEntry[]
      readonly system: UnitSystem
    }
)

const names = (blocks: readonly Block[]): string =>
  [...new Set(blocks.map(({ name }) => name ?? ''))].join(', ')

/** The blocks of that name; all of them where none is named. */
function pick(blocks: readonly Block[], kind: string, name: string | undefined): readonly Block[] {
  if (blocks.length === 0) throw new CannotRun(`The job has no ${kind}.`)
  const found = name === undefined ? blocks : blocks.filter((block) => block.name === name)
  if (found.length === 0)
    throw new CannotRun(`There is no ${kind} called ${name}. The job has ${names(blocks)}.`)
  return found
}

/** The drives to plan: with a reading named, those that have one of that name. */
function drivesOf(blocks: readonly Block[], { drive, reading }: Options): readonly Block[] {
  const drives = pick(
    blocks.filter(({ kind }) => kind === 'drive'),
    'drive',
    drive,
  )
  if (drive !== undefined && drives.length > 1)
    throw new CannotRun(
      `There are ${drives.length} drives called ${drive}: it is not clear which one you mean. Give each its own name.`,
    )
  if (reading === undefined) return drives
  const readings = (one: Block) => childrenOf(one, 'reading')
  const named = pick(drives.flatMap(readings), 'reading', reading)
  return drives.filter((one) => readings(one).some((block) => named.includes(block)))
}

/** A brace that is missing puts a block where it is not looked for. */
const mayHide = ({ section }: Block): string =>
  section.parsed.problems.length === 0 ? '' : ' Errors in its text may hide one: run `shaftwright check`.'

/** Plans a drive from the reading of that name, or from its last one. */
function planned(
  block: Block,
  name: string | undefined,
  { analysis, ...checked }: Parameters<typeof trustedCorrection>[2] & View,
): Planned {
  const drive = block.name ?? ''
  const named = childrenOf(block, 'reading').filter((one) => one.name === name)
  if (named.length > 1)
    return {
      drive,
      reading: name ?? null,
      fault: `There are ${named.length} readings called ${name}: it is not clear which one you mean. Give each its own name.`,
    }
  const reading = name === undefined ? lastReading(block) : named[0]
  if (!reading) return { drive, reading: null, fault: `The drive has no reading.${mayHide(block)}` }
  const lookup = lookupFrom(reading, { analysis, file: checked.file })
  const outcome = trustedCorrection(lookup.block, lookup, checked)
  if (!outcome.ok) return { drive, reading: reading.name ?? '', fault: outcome.fault.words }
  return {
    drive,
    fault: null,
    correction: outcome.value,
    log: logUpTo(lookup.block, lookup),
    system: lookup.system,
  }
}

const textOf = (plan: Planned): string =>
  plan.fault === null
    ? planText(plan.correction, plan.log, plan.system)
    : `${[plan.drive, plan.reading ?? ''].join(' ').trim()}: no plan\n  ${plan.fault}`

const jsonOf = (plan: Planned): PlansJson['plans'][number] =>
  plan.fault === null
    ? // The schema has lists that may be written to; here they are only read.
      ({
        ...planJson(plan.correction, plan.system),
        log: logJson(plan.log),
      } as PlansJson['plans'][number])
    : plan

/** `plan`: the moves of each foot, drive by drive. Ends with 1 where a drive cannot be planned, or something a plan depends on is written
 * wrong. */
export async function plan(path: string, options: Options): Promise<void> {
  const { format, today } = options
  const opened = openJob({ path }, { stdin: await readStdin([path]) })
  const { file } = opened
  const { refusal } = file.document
  if (refusal) throw new CannotRun(refusalWords(opened.shown(file), refusal))
  const analysis = new Analysis()
  analysis.begin()
  const blocks = analysis.blocks(file)
  const drives = drivesOf(blocks, options)
  const findings = new Checker(analysis, allChecks).check(file, { today })
  const checked = { file, findings, analysis }
  const plans = drives.map((drive) => planned(drive, options.reading, checked))
  if (plans.some((one) => one.fault !== null || one.correction.errors)) process.exitCode = 1
  const job = identityOf(blocks)
  const shown = opened.shown(file)
  if (format === 'json') {
    const json: PlansJson = {
      version: 2,
      tool,
      file: shown,
      job: job ? jobJson(job) : null,
      date: today,
      plans: plans.map(jsonOf),
    }
    printJson(json)
    return
  }
  const heading = (name: string): string => {
    const words = `Drive ${name}`
    return `${words}\n${'='.repeat(words.length)}\n`
  }
  print(
    [
      planHeading({ job, today, file: harmless(shown) }),
      ...plans.map((one) => (plans.length > 1 ? heading(one.drive) : '') + textOf(one)),
    ]
      .join('\n\n')
      .split('\n'),
  )
}
