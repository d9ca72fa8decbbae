import type { Identity } from '../../../job/identity.ts'

/** What a plan is made from, so that a printed one can be told from another. */
export interface PlanOrigin {
  readonly job: Identity | undefined
  /** The day it is made, `YYYY-MM-DD`. */
  readonly today: string
  /** The job file, as whoever reads the plan would name it. */
  readonly file: string
}

const notStated = 'not stated'

/** The lines above a plan: vessel, job, revision and status, day and file. */
export const planHeading = ({ job, today, file }: PlanOrigin): string =>
  [
    `Vessel:    ${job?.vessel ?? notStated}`,
    `Job:       ${job?.title ?? notStated}`,
    `Revision:  ${job?.revision ?? notStated} (${job?.status ?? 'status not stated'})`,
    `Date:      ${today}`,
    `File:      ${file}`,
  ].join('\n')
