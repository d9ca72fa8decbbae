import { identityOf } from '../../../job/identity.ts'
import { type Block, childrenOf } from '../../../job/model.ts'
import type { View } from '../../../job/per-section.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import { lookupFrom } from '../../../store/store.ts'
import { harmless } from '../../../syntax/harmless.ts'
import type { AreaCommand } from '../../common/command.ts'
import { blocksNamed, drivesNamed } from '../../common/command-blocks.ts'
import { trustedCorrection } from '../plan-trust.ts'
import type { Correction } from '../plans/correction.ts'
import { type LogEntry, logUpTo } from '../plans/log.ts'
import { logJson } from '../plans/log-json.ts'
import { lastReading } from '../plans/moves.ts'
import { planHeading } from '../plans/plan-heading.ts'
import { planJson } from '../plans/plan-json.ts'
import { planText } from '../plans/plan-text.ts'
import { type PlansJson, planSchema } from './plan-schema.ts'

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

/** The drives to plan: with a reading named, those that have one of that name. */
function drivesToPlan(
  blocks: readonly Block[],
  drive: string | undefined,
  reading: string | undefined,
): readonly Block[] {
  const drives = drivesNamed(blocks, drive)
  if (reading === undefined) return drives
  const readings = (one: Block) => childrenOf(one, 'reading')
  const named = blocksNamed(drives.flatMap(readings), 'reading', reading)
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

const heading = (name: string): string => {
  const words = `Drive ${name}`
  return `${words}\n${'='.repeat(words.length)}\n`
}

/** `plan`: the moves of each foot, drive by drive. Ends with 1 where a drive cannot be planned, or something a plan depends on is written
 * wrong. */
export const plan: AreaCommand<typeof planSchema> = {
  name: 'plan',
  description: 'Calculate the moves of each foot from a reading of the coupling, for each drive.',
  options: [
    { flags: '--drive <name>', description: 'plan only this drive' },
    { flags: '--reading <name>', description: 'plan from this reading instead of the last one' },
  ],
  schema: planSchema,
  run({ head, ...job }, { drive, reading }) {
    const blocks = job.analysis.blocks(job.file)
    const plans = drivesToPlan(blocks, drive, reading).map((one) => planned(one, reading, job))
    return {
      text: [
        planHeading({ job: identityOf(blocks), today: head.date, file: harmless(head.file) }),
        ...plans.map((one) => (plans.length > 1 ? heading(one.drive) : '') + textOf(one)),
      ].join('\n\n'),
      json: { version: 2, ...head, plans: plans.map(jsonOf) },
      exitCode: plans.some((one) => one.fault !== null || one.correction.errors) ? 1 : 0,
    }
  },
}
