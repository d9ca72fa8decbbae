import { getOrInsert } from '../../../common/get-or-insert.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import type { FactValue } from '../../../vocabulary/index.ts'
import { isLater } from '../../common/days.ts'

export type TestKind = FactValue<'test.kind'>

interface Entry {
  readonly test: BlockId
  readonly taken: string | undefined
  /** Run-out is read at several places. */
  readonly where: string | undefined
}

const keyOf = (part: BlockId, kind: TestKind): string => `${kind} ${part}`

/** The test records of a file by kind and part, each in the order of their dates; of one day as they are written. */
function logOfFile({ ofKind, from }: FileLookup): ReadonlyMap<string, readonly Entry[]> {
  const log = new Map<string, Entry[]>()
  const tests = [...ofKind('test'), ...ofKind('drive').flatMap((drive) => childrenOf(drive, 'test'))]
  for (const test of tests) {
    const part = from(test).referred('on')
    const kind = factOf(test, 'test.kind')?.value
    if (!part || !kind) continue
    const taken = factOf(test, 'test.taken')?.value
    const where = factOf(test, 'test.where')?.value
    getOrInsert(log, keyOf(idOf(part), kind), () => []).push({ test: idOf(test), taken, where })
  }
  const byDate = ({ taken: a = '' }: Entry, { taken: b = '' }: Entry) =>
    isLater(a, b) ? 1 : isLater(b, a) ? -1 : 0
  return new Map([...log].map(([key, entries]) => [key, entries.toSorted(byDate)]))
}

/** The records of one kind of test on a part, in the order of their dates. */
export const testsOn = (part: Block, kind: TestKind, { ofFile }: FileLookup): readonly Entry[] =>
  ofFile(logOfFile).get(keyOf(idOf(part), kind)) ?? []

/** The part that a test is about. */
export const partOf = (lookup: Lookup): Block | undefined => lookup.referred('on')

/** The later record of the same kind on the same part, which counts instead. */
export const replacedBy = plan((test: Block, lookup: Lookup): BlockId | undefined => {
  const part = partOf(lookup)
  const kind = factOf(test, 'test.kind')?.value
  if (!part || !kind) return undefined
  const id = idOf(test)
  const where = factOf(test, 'test.where')?.value
  const last = testsOn(part, kind, lookup)
    .filter((entry) => entry.where === where)
    .at(-1)
  return last && last.test !== id ? last.test : undefined
})
