import type { Lookup } from '../job/lookup.ts'
import { factOf } from '../job/model.ts'

/** Whether the job is said to be as-built: what is then still open weighs more. */
export function isAsBuilt({ ofKind }: Pick<Lookup, 'ofKind'>): boolean {
  const [job] = ofKind('job')
  return job !== undefined && factOf(job, 'job.status')?.value === 'as-built'
}
