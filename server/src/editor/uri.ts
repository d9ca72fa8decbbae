/** A place in a tree of folders, whoever keeps them: `file:`, or what a browser reaches. */
const hierarchical = /^[a-z][a-z0-9+.-]*:\/\/[^?#]*$/i

/** One spelling for a URI, so that the same file is the same file: escapes undone, the drive letter small. What is no path stays as it is. */
export function keyOf(uri: string): string {
  if (!hierarchical.test(uri)) return uri
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
  return key.startsWith('file:///') && slash >= 'file://'.length ? key.slice(0, slash) : undefined
}

/** The key of a folder, however many slashes it ends in. */
export const folderKey = (uri: string): string => keyOf(uri).replace(/\/+$/, '')

/** Whether a folder is the root of a disk, on which far more lies than jobs. */
export const isWholeDisk = (uri: string): boolean => /^file:(\/\/\/[a-z]:)?$/.test(folderKey(uri))

export const isWithin = (key: string, folder: string): boolean => key.startsWith(`${folder}/`)
