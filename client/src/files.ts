// Reads files for a language server that cannot: through the editor, and only below the folders it has open.
import { FileType, Uri, workspace } from 'vscode'
import type { BaseLanguageClient } from 'vscode-languageclient'
import {
  type ListFilesParams,
  type ListFilesResult,
  listFiles,
  type ReadFileParams,
  type ReadFileResult,
  readFile,
} from '../../server/src/editor/client-requests.ts'
import { isJobFile, isSearched, stepsBelow } from './file-paths.ts'

const utf8 = new TextDecoder('utf-8', { fatal: true })

/** The folder of the workspace that has this URI. */
const workspaceFolder = (root: string): Uri | undefined => {
  const wanted = Uri.parse(root).toString()
  return workspace.workspaceFolders?.find(({ uri }) => uri.toString() === wanted)?.uri
}

/** Where a link leads cannot be seen from here, so that none is followed. */
const isLink = (type: FileType): boolean => (type & FileType.SymbolicLink) !== 0

const readBelow = async ({ uri, root }: ReadFileParams): Promise<ReadFileResult> => {
  const folder = workspaceFolder(root)
  const steps = folder && stepsBelow(folder, Uri.parse(uri))
  if (!steps) return null
  try {
    let at = folder
    for (const step of steps) {
      at = Uri.joinPath(at, step)
      if (isLink((await workspace.fs.stat(at)).type)) return null
    }
    return utf8.decode(await workspace.fs.readFile(at))
  } catch {
    return null // no such file, or no text
  }
}

const listBelow = async (folder: Uri): Promise<readonly string[]> => {
  const entries = await Promise.resolve(workspace.fs.readDirectory(folder)).catch(() => [])
  const found = entries
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(async ([name, type]) => {
      const uri = Uri.joinPath(folder, name)
      if (type === FileType.Directory) return isSearched(name) ? listBelow(uri) : []
      return type === FileType.File && isJobFile(name) ? [uri.toString()] : []
    })
  return (await Promise.all(found)).flat()
}

export const answerFileRequests = (client: BaseLanguageClient): void => {
  client.onRequest(readFile, readBelow)
  client.onRequest(listFiles, async ({ root }: ListFilesParams): Promise<ListFilesResult> => {
    const folder = workspaceFolder(root)
    return folder ? listBelow(folder) : []
  })
}
