import type { Connection } from 'vscode-languageserver'
import type { Host } from '../../host/host.ts'
import {
  type ListFilesParams,
  type ListFilesResult,
  listFiles,
  type ReadFileParams,
  type ReadFileResult,
  readFile,
} from '../client-requests.ts'

/** Any editor may answer, with anything. */
const isRead = (read: ReadFileResult): read is Exclude<ReadFileResult, null> =>
  typeof read === 'string' || (typeof read === 'object' && read !== null && typeof read.type === 'string')

/** Files that only the editor can reach. To a server whose editor cannot be asked, there are none. */
export const clientFiles = (connection: Connection): Pick<Host, 'read' | 'list'> => ({
  read: async (uri, root) => {
    const params: ReadFileParams = { uri, root }
    const read = await connection.sendRequest<ReadFileResult>(readFile, params).catch(() => null)
    return isRead(read) ? read : undefined
  },
  list: async (root) => {
    const params: ListFilesParams = { root }
    const uris: unknown = await connection.sendRequest<ListFilesResult>(listFiles, params).catch(() => null)
    return Array.isArray(uris) ? uris.filter((uri) => typeof uri === 'string') : []
  },
})
