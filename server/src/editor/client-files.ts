import type { Connection } from 'vscode-languageserver'
import {
  type ListFilesParams,
  type ListFilesResult,
  listFiles,
  type ReadFileParams,
  type ReadFileResult,
  readFile,
} from './client-requests.ts'
import type { Host } from './host.ts'

/** Files that only the editor can reach. To a server whose editor cannot be asked, there are none. */
export const clientFiles = (connection: Connection): Pick<Host, 'read' | 'list'> => ({
  read: async (uri, root) => {
    const params: ReadFileParams = { uri, root }
    const text = await connection.sendRequest<ReadFileResult>(readFile, params).catch(() => null)
    return text ?? undefined
  },
  list: async (root) => {
    const params: ListFilesParams = { root }
    const uris = await connection.sendRequest<ListFilesResult | null>(listFiles, params).catch(() => null)
    return uris ?? []
  },
})
