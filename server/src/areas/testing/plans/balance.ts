import { imbalance } from '../../../engineering/insulation/balance.ts'
import { type Block, factOf, type Value } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import type { FactValue } from '../../../vocabulary/index.ts'
import { partOf } from './test-log.ts'

type Marked = Value<FactValue<'test.resistances'>>

/** What a test measured phase by phase. */
export function phasesOf(test: Block): Marked | undefined {
  const kind = factOf(test, 'test.kind')?.value
  if (kind === 'phase-resistance') return factOf(test, 'test.resistances')
  return kind === 'no-load-current' ? factOf(test, 'test.currents') : undefined
}

/** Usual limits of imbalance, where the job states none. Common practice, no source. */
const usual = { resistance: 0.05, current: 0.1 } as const

export interface Balance {
  /** Largest difference from the mean, as a share of it. */
  readonly share: number
  readonly most: number
  /** Whether the job states the limit. */
  readonly isStated: boolean
  readonly what: keyof typeof usual
}

/** The imbalance that a test found. Undefined where fewer than two phases were measured, or all are zero. */
export const balanceOf = plan((test: Block, _lookup: Lookup): Balance | undefined => {
  const values = phasesOf(test)?.value.map(({ value }) => value) ?? []
  if (values.length < 2 || values.every((value) => value === 0)) return undefined
  const what = factOf(test, 'test.kind')?.value === 'phase-resistance' ? 'resistance' : 'current'
  const permitted = factOf(test, 'test.permitted')?.value
  const own = permitted?.quantity === 'ratio' ? permitted.high : undefined
  return { share: imbalance(values), most: own ?? usual[what], isStated: own !== undefined, what }
})

/** What separates the two terminals of a pair. */
const separators = ['-', '/', ' ', '']

/** The phases that a test has to measure and those it has, by the terminals of the motor. */
export const phasesMeasured = plan((test: Block, lookup: Lookup) => {
  const marks = phasesOf(test)?.value.map(({ mark }) => mark)
  const motor = partOf(lookup)
  const terminals =
    motor?.kind === 'motor' ? (factOf(motor, 'motor.terminals')?.value.map(({ name }) => name) ?? []) : []
  if (!marks || terminals.length < 2) return undefined
  const isPairs = factOf(test, 'test.kind')?.value === 'phase-resistance'
  const pairs = terminals.flatMap((a, i) => terminals.slice(i + 1).map((b) => [a, b] as const))
  const wanted = isPairs
    ? pairs.map(([a, b]) => ({
        name: `${a}-${b}`,
        as: separators.flatMap((between) => [`${a}${between}${b}`, `${b}${between}${a}`]),
      }))
    : terminals.map((name) => ({ name, as: [name] }))
  const measured = marks.map((mark) => wanted.find(({ as }) => as.includes(mark))?.name)
  return {
    missing: wanted.map(({ name }) => name).filter((name) => !measured.includes(name)),
    unknown: marks.filter((_, i) => measured[i] === undefined),
    twice: marks.filter((_, i) => measured[i] !== undefined && measured.indexOf(measured[i]) < i),
  }
})
