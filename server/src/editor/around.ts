import type { JobFile } from '../job/files.ts'
import { keyOf } from './uri.ts'
import type { Workspace } from './workspace.ts'

export interface FileAround {
  readonly uri: string
  readonly file: JobFile
}

/** The open files and all that they use, each once. */
export function filesAround(workspace: Workspace): readonly FileAround[] {
  const around = new Map<string, FileAround>()
  for (const open of workspace.openFiles) {
    const file = workspace.link(open)
    around.set(keyOf(open.uri), { uri: open.uri, file })
    for (const used of file.used) {
      const [section] = used.document.sections
      const uri = section && workspace.locate(open, { section, span: { start: 0, end: 0 } })?.uri
      if (uri !== undefined && !around.has(keyOf(uri))) around.set(keyOf(uri), { uri, file: used })
    }
  }
  return [...around.values()]
}
