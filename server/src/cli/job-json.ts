import type { JobJson } from '../areas/common/command-json.ts'
import type { Identity } from '../job/identity.ts'

/** What a job says it is, for JSON: `null` where it does not say. */
export const jobJson = ({ vessel, title, revision, status }: Identity): Omit<JobJson, 'file'> => ({
  vessel: vessel ?? null,
  title: title ?? null,
  revision: revision ?? null,
  status: status ?? null,
})
