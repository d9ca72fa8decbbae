import type { NewJobParams } from '../editor/client-requests.ts'
import { newJobText } from '../editor/new-job/new-job.ts'
import { printFile } from './terminal.ts'

interface Options extends Pick<NewJobParams, 'units' | 'feet'> {
  readonly drives: '1' | '2'
}

/** `new`: prints what New Job... writes in an editor. */
export function newJob(vessel: string, { drives, units, feet }: Options): void {
  printFile(newJobText({ vessel, drives: drives === '2' ? 2 : 1, units, feet }))
}
