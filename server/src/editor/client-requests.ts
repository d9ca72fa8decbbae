// What a server without files of its own asks of the editor it serves. Shared by both sides, so without either's library.

export const readFile = 'shaftwright/readFile'
export interface ReadFileParams {
  readonly uri: string
  /** The folder that the file must lie in. */
  readonly root: string
}
/** Null when there is no such file, or when it lies outside. */
export type ReadFileResult = string | null

export const listFiles = 'shaftwright/listFiles'
export interface ListFilesParams {
  readonly root: string
}
/** URIs of the job files below the folder: without those in `node_modules`, or in folders whose name begins with a dot. */
export type ListFilesResult = readonly string[]
