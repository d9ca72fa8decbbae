import { memoizeByIdentity } from '../../common/memoize-by-identity.ts'
import type { JobFile } from '../../job/files.ts'
import { systemsWritten } from '../../job/systems-written.ts'
import type { UnitSystem } from '../../quantity/kinds.ts'

/** Whether a job, with the files it uses, is written in both systems of units: every section of it asks. */
export const isMixed = memoizeByIdentity(({ document, used }: JobFile): boolean => {
  const found = new Set<UnitSystem>()
  for (const each of [document, ...used.map((file) => file.document)])
    for (const section of each.sections) {
      for (const system of systemsWritten(section)) found.add(system)
      if (found.size > 1) return true
    }
  return false
})
