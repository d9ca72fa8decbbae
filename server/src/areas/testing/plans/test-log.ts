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
  readonly kind: TestKind | undefined
  /** The part that was tested. */
  readonly on: BlockId | undefined
  readonly taken: string | undefined
  /** Run-out is read at several places. */
  readonly where: string | undefined
}

/** All test records of a file, as they are written. */
const testsOfFile = ({ ofKind, from }: FileLookup): readonly Entry[] =>
  [...ofKind('test'), ...ofKind('drive').flatMap((drive) => childrenOf(drive, 'test'))].map((test) => {
    const on = from(test).referred('on')
    return {
      test: idOf(test),
      kind: factOf(test, 'test.kind')?.value,
      on: on && idOf(on),
      taken: factOf(test, 'test.taken')?.value,
      where: factOf(test, 'test.where')?.value,
    }
  })

/** The records of one kind of test on a part, in the order of their dates; of one day as they are written. */
export function testsOn(part: Block, kind: TestKind, lookup: FileLookup): readonly Entry[] {
  const id = idOf(part)
  return lookup
    .ofFile(testsOfFile)
    .filter((entry) => entry.kind === kind && entry.on === id)
    .toSorted(({ taken: a = '' }, { taken: b = '' }) => (isLater(a, b) ? 1 : isLater(b, a) ? -1 : 0))
}

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
