/** How far a job has got, in order. Each status also asks for what those before it ask for. */
export const statuses = ['draft', 'for-review', 'issued', 'as-built'] as const
export type Status = (typeof statuses)[number]

/** What a job without a status counts as. */
export const silentStatus: Status = 'for-review'

/** Whether a job of this status is asked for what is asked for from that one on. */
export const asks = (status: Status, from: Status | undefined): boolean =>
  from !== undefined && statuses.indexOf(from) <= statuses.indexOf(status)
