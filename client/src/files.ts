// Reads files for a language server that cannot: through the editor, and only below the folders it has open.
import { FileType, Uri, workspace } from 'vscode'
import type { BaseLanguageClient } from 'vscode-languageclient'
import {
  type ListFilesParams,
  type ListFilesResult,
  largestFile,
  listFiles,
  type ReadFileParams,
  type ReadFileResult,
  readFile,
  textFrom,
} from '../../server/src/editor/client-requests.ts'
import { revisionSchemes } from './document-selector.ts'
import { isJobFile, isSearched, stepsBelow } from './file-paths.ts'

/** The folder of the workspace that has this URI. */
const workspaceFolder = (root: string): Uri | undefined => {
  const wanted = Uri.parse(root).toString()
  return workspace.workspaceFolders?.find(({ uri }) => uri.toString() === wanted)?.uri
}

/** Where a link leads cannot be seen from here, so that none is followed. */
const isLink = (type: FileType): boolean => (type & FileType.SymbolicLink) !== 0

const readBelow = async ({ uri, root }: ReadFileParams): Promise<ReadFileResult> => {
  if (revisionSchemes.includes(Uri.parse(uri).scheme)) return readRevision(Uri.parse(uri), Uri.parse(root))
  const folder = workspaceFolder(root)
  const steps = folder && stepsBelow(folder, Uri.parse(uri))
  if (!steps) return null
  try {
    let at = folder
    for (const step of steps) {
      at = Uri.joinPath(at, step)
      if (isLink((await workspace.fs.stat(at)).type)) return null
    }
    const { size } = await workspace.fs.stat(at)
    return size > largestFile ? { type: 'file-too-large' } : textFrom(await workspace.fs.readFile(at))
  } catch {
    return null // no such file
  }
}

/** Whether an older state of this folder may be read: it is open, or around a text that is open. */
const isAround = (folder: Uri): boolean =>
  workspace.workspaceFolders?.some(({ uri }) => uri.path === folder.path) ||
  workspace.textDocuments.some(
    ({ uri }) => uri.scheme === folder.scheme && Uri.joinPath(uri, '..').path === folder.path,
  )

/** A file in an older state, which whoever keeps it gives as a file or as a text alone. */
const readRevision = async (file: Uri, folder: Uri): Promise<ReadFileResult> => {
  if (!isAround(folder) || !stepsBelow(folder, file)) return null
  const bytes = await Promise.resolve(workspace.fs.readFile(file)).catch(() => undefined)
  if (bytes) return textFrom(bytes)
  const document = await Promise.resolve(workspace.openTextDocument(file)).catch(() => undefined)
  return document?.getText() ?? null
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
  client.onRequest<ReadFileResult, unknown>(readFile, readBelow)
  client.onRequest(listFiles, async ({ root }: ListFilesParams): Promise<ListFilesResult> => {
    const folder = workspaceFolder(root)
    return folder ? listBelow(folder) : []
  })
}
