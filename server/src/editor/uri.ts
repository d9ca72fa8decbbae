/** One spelling for a URI, so that the same file is the same file: escapes undone, the drive letter small. Others than `file:` stay as they are. */
export function keyOf(uri: string): string {
  if (!/^file:/i.test(uri)) return uri
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

/** The URI of a key, escaped again. */
export const uriOf = (key: string): string =>
  key.startsWith('file://') ? `file://${key.slice(7).split('/').map(encodeURIComponent).join('/')}` : key

/** The key of the folder a file stands in; undefined where there are no folders (`untitled:Untitled-1`). */
export function folderOf(key: string): string | undefined {
  const slash = key.lastIndexOf('/')
  return key.startsWith('file:///') && slash >= 'file://'.length ? key.slice(0, slash) : undefined
}

export const isWithin = (key: string, folder: string): boolean => key.startsWith(`${folder}/`)
