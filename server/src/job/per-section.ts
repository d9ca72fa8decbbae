import { memoizeByIdentity } from '../common/memoize-by-identity.ts'
import type { Analysis } from './analysis.ts'
import type { Bound } from './bind.ts'
import type { JobFile } from './files.ts'
import { Memo, scopeOf } from './memo.ts'
import type { Section } from './model.ts'
import type { Scope } from './scope.ts'

export interface View {
  readonly analysis: Analysis
  readonly file: JobFile
}

/** What follows from what a section says, kept until the section or an answer it got from the rest of the job is another. */
export function perSection<T>(
  make: (bound: Bound, scope: Scope) => readonly T[],
): (view: View, section: Section) => readonly T[] {
  const memoOf = memoizeByIdentity((_: Analysis) => new Memo<readonly T[]>())
  return ({ analysis, file }, section) => {
    const input = analysis.bound(file, section)
    const scope = analysis.scope(file)
    return (
      memoOf(analysis).get(section, { snapshot: analysis.snapshot(file), scope, input }, (ask) =>
        make(input, scopeOf(ask)),
      ) ?? []
    )
  }
}
