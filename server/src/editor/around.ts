import type { ResponseError } from 'vscode-languageserver'
import type { JobFile } from '../job/files.ts'
import { changedMeanwhile } from './changed-meanwhile.ts'
import type { Asked } from './feature.ts'
import { pause } from './quiet.ts'
import { keyOf } from './uri.ts'
import type { OpenFile, Workspace } from './workspace.ts'

export interface Cancellation {
  readonly isCancellationRequested: boolean
}

export interface FileAround {
  readonly uri: string
  readonly file: JobFile
}

/** Every job file of the workspace, each once: those that are open, as they are now, those on disk in its folders, and all that they use. */
export async function filesAround(workspace: Workspace, stop?: Cancellation): Promise<readonly FileAround[]> {
  const around = new Map<string, FileAround>()
  const used = new Map<string, FileAround>()
  const add = (open: OpenFile): void => {
    const file = workspace.link(open)
    around.set(keyOf(open.uri), { uri: open.uri, file })
    for (const other of file.used) {
      const uri = workspace.uriAt(open, other.path)
      if (uri !== undefined) used.set(keyOf(uri), { uri, file: other })
    }
  }
  // Asked seldom, and what is left out would be lost: the folders are looked through again.
  await workspace.list()
  const closed: OpenFile[] = []
  for await (const file of closedFiles(workspace, stop)) closed.push(file)
  for (const file of [...closed, ...workspace.openFiles]) await workspace.whole(file)
  // From here on nothing is waited for, so that all are of one moment.
  for (const file of closed) if (!workspace.get(file.uri)) add(file)
  for (const open of workspace.openFiles) add(open)
  // A file is the one text that those who use it see.
  for (const [key, of] of used) if (!workspace.get(of.uri)) around.set(key, of)
  return [...around.values()]
}

/** The same for what is asked of an open text; a refusal where that was edited while files were read. */
export async function filesAroundOpen({
  workspace,
  open,
  token,
}: Pick<Asked<unknown>, 'workspace' | 'open' | 'token'>): Promise<
  readonly FileAround[] | ResponseError<void>
> {
  const around = await filesAround(workspace, token)
  return workspace.get(open.uri)?.document === open.document ? around : changedMeanwhile()
}

/** The job files in the folders that are not open, with room for other work between them. */
export async function* closedFiles(workspace: Workspace, stop?: Cancellation): AsyncGenerator<OpenFile> {
  for (const [i, uri] of workspace.paths.entries()) {
    if (i % 16 === 15) await pause()
    if (stop?.isCancellationRequested) return
    const closed = workspace.get(uri) ? undefined : await workspace.view(uri)
    if (closed) yield closed
  }
}
