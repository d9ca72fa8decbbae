/** What a plan is of: a drive or a reading, by its path in a job file. */
export interface PlanSubject {
  /** The URI of the job file. */
  readonly job: string
  /** `port`, or `port.dry-1`. */
  readonly path: string
}

export const planScheme = 'shaftwright-plan'

/** The parts of the URI under which a plan is shown. It holds all that is needed to ask for the plan again after the window was reloaded. package.json
 * gives the folder its language. */
export const planLocation = ({ job, path }: PlanSubject) => ({
  scheme: planScheme,
  path: `/Shaftwright plan/${job.split(/[?#]/, 1)[0]?.split('/').at(-1)}/Plan of ${path.replaceAll('/', ' ')}`,
  query: JSON.stringify({ job, path }),
})

/** The other way round; undefined for a URI that is none of ours. */
export function subjectOf({ query }: { readonly query: string }): PlanSubject | undefined {
  try {
    const given: unknown = JSON.parse(query)
    if (typeof given !== 'object' || given === null || !('job' in given) || !('path' in given))
      return undefined
    const { job, path } = given
    return typeof job === 'string' && typeof path === 'string' ? { job, path } : undefined
  } catch {
    return undefined
  }
}
