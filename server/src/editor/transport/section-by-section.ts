import type { ResponseError } from 'vscode-languageserver'
import type { Section } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import type { TextRequestContext } from '../feature.ts'
import { changedMeanwhile } from './changed-meanwhile.ts'
import { pause } from './quiet.ts'

/** No keystroke is kept waiting longer than this for an answer about a whole file, ms. */
const turn = 8

/** Goes through sections of an open text in short turns, so that what is typed meanwhile is taken first. Once the text has changed, or nobody waits
 * any more, the rest is not worked out. */
export async function sectionBySection<T>(
  { workspace, open, token }: Pick<TextRequestContext<unknown>, 'workspace' | 'open' | 'token'>,
  sections: readonly Section[],
  work: (view: View, section: Section) => readonly T[],
): Promise<T[] | ResponseError<void>> {
  const found: T[] = []
  let began = performance.now()
  for (const section of sections) {
    if (performance.now() - began > turn) {
      await pause()
      began = performance.now()
      if (token.isCancellationRequested || workspace.get(open.uri)?.document !== open.document)
        return changedMeanwhile()
    }
    for (const one of work(workspace.viewOf(open), section)) found.push(one)
  }
  return found
}
