import { type Block, factOf } from './model.ts'

/** What a job says it is: named on everything that is made from it. */
export interface Identity {
  readonly vessel: string | undefined
  readonly title: string | undefined
  readonly revision: string | undefined
  readonly status: string | undefined
}

/** Of the blocks of a file; undefined where none of them is a job: the file is a library. */
export function identityOf(blocks: readonly Block[]): Identity | undefined {
  const job = blocks.find(({ kind }) => kind === 'job')
  return (
    job && {
      vessel: factOf(job, 'job.vessel')?.value,
      title: job.title,
      revision: factOf(job, 'job.revision')?.value,
      status: factOf(job, 'job.status')?.value,
    }
  )
}
