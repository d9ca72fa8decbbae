import { runOutLimit } from '../../../engineering/run-out.ts'
import { type Block, factOf, type Value } from '../../../job/model.ts'
import type { Kind } from '../../../quantity/kinds.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { insulationOf } from './insulation.ts'
import { partOf } from './test-log.ts'

/** One measured value with an upper limit, SI. */
export interface Measured {
  readonly what: string
  readonly quantity: Kind
  readonly value: number
  /** Absent where neither the job nor a standard states it. */
  readonly most?: number
  readonly limitFrom?: string
}

/** The fact of a test that has an upper limit of its own. */
export function measuredFact(
  test: Block,
): { readonly what: string; readonly fact: Value<number> } | undefined {
  const kind = factOf(test, 'test.kind')?.value
  const facts = {
    'run-out': { what: 'run-out', fact: factOf(test, 'test.run-out') },
    bonding: { what: 'resistance of the bond', fact: factOf(test, 'test.resistance') },
    'earth-leakage': { what: 'current to earth', fact: factOf(test, 'test.current') },
    precharge: { what: 'time of precharge', fact: factOf(test, 'test.time') },
    discharge: { what: 'time of discharge', fact: factOf(test, 'test.time') },
  } as const
  const row = kind && kind in facts ? facts[kind as keyof typeof facts] : undefined
  return row?.fact && { what: row.what, fact: row.fact }
}

const quantities: Readonly<Record<string, Kind>> = {
  'run-out': 'length',
  resistance: 'resistance',
  current: 'current',
  time: 'time',
}

/** What a test measured that has an upper limit: of the job, else of IEC 60072-1. */
export const measuredOf = plan((test: Block, lookup: Lookup): Measured | undefined => {
  const found = measuredFact(test)
  if (!found) return undefined
  const { what, fact } = found
  const quantity = quantities[fact.name] ?? 'ratio'
  const permitted = factOf(test, 'test.permitted')?.value
  const own = permitted?.quantity === quantity ? permitted.high : undefined
  if (own !== undefined) return { what, quantity, value: fact.value, most: own, limitFrom: 'the job' }
  const where = factOf(test, 'test.where')?.value
  const diameter = factOf(test, 'test.diameter')?.value
  const most =
    fact.name === 'run-out' && where && diameter !== undefined && partOf(lookup)?.kind === 'motor'
      ? runOutLimit({ where, diameter })
      : undefined
  return {
    what,
    quantity,
    value: fact.value,
    ...(most !== undefined && { most, limitFrom: 'IEC 60072-1' }),
  }
})

/** The resistance to earth of a busbar or battery that nothing gives a limit for. */
export function leakageWithoutLimit(test: Block, lookup: Lookup): Measured | undefined {
  const value = factOf(test, 'test.resistance')?.value
  const isOpen = factOf(test, 'test.kind')?.value === 'earth-leakage' && !insulationOf(test, lookup)
  return value !== undefined && isOpen
    ? { what: 'resistance to earth', quantity: 'resistance', value }
    : undefined
}
