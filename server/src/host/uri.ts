import { revisionKey, revisionUri, stateOf } from './revision.ts'

/** A place in a tree of folders, whoever keeps them: `file:`, or what a browser reaches. */
const hierarchical = /^[a-z][a-z0-9+.-]*:\/\/[^?#]*$/i

/** One spelling for a URI, so that the same file is the same file: escapes undone, the drive letter small. What is no path stays as it is. A file
 * in an older state is another file. */
export function keyOf(uri: string): string {
  if (!hierarchical.test(uri)) return revisionKey(uri) ?? uri
  return unescaped(uri)
    .replace(/^file:/i, 'file:')
    .replace(/^file:\/\/\/[A-Z]:/, (drive) => drive.toLowerCase())
}

function unescaped(uri: string): string {
  try {
    return decodeURIComponent(uri)
  } catch {
    return uri
  }
}

/** The URI of a key, escaped again. Half a character (a surrogate alone) has no escape: it stands for one that is not known. */
export function uriOf(key: string): string {
  const revision = revisionUri(key)
  if (revision !== undefined) return revision
  const { scheme, path } = /^(?<scheme>[^:/]+:\/\/)(?<path>.*)$/s.exec(key)?.groups ?? {}
  return scheme && path !== undefined
    ? scheme +
        path
          .replaceAll(/\p{Surrogate}/gu, '\uFFFD')
          .split('/')
          .map(encodeURIComponent)
          .join('/')
    : key
}

/** The key of the folder a file stands in; undefined where there are no folders (`untitled:Untitled-1`). */
export function folderOf(key: string): string | undefined {
  const slash = key.lastIndexOf('/')
  const hasFolders = key.startsWith('file:///') || stateOf(key) !== undefined
  return hasFolders && slash >= 'file://'.length ? key.slice(0, slash) : undefined
}

/** The key of the folder in the same state as a file: as it is, for a file as it is now. */
export function folderAsOf(folder: string, file: string): string {
  const state = stateOf(file)
  return state === undefined ? folder : state + folder.replace(/^[^:/]+:\/\/[^/]*/, '')
}

/** The key of a folder, however many slashes it ends in. */
export const folderKey = (uri: string): string => keyOf(uri).replace(/\/+$/, '')

/** Whether a folder is the root of a disk, on which far more lies than jobs. */
export const isWholeDisk = (uri: string): boolean => /^file:(\/\/\/[a-z]:)?$/.test(folderKey(uri))

export const isWithin = (key: string, folder: string): boolean => key.startsWith(`${folder}/`)

/** The keys of the folders that a key lies in, the nearest first. */
export function foldersAround(key: string): readonly string[] {
  const folders: string[] = []
  const top = key.indexOf('/', key.indexOf('://') + 3)
  for (let end = key.lastIndexOf('/'); end >= top && end > 0; end = key.lastIndexOf('/', end - 1))
    folders.push(key.slice(0, end))
  return folders
}

/** Whether job files are looked for in a folder of this name. */
export const isSearched = (name: string): boolean => name !== 'node_modules' && !name.startsWith('.')
