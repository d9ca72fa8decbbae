// A file as it was: editors show an older state under a URI whose query says which one, as git's `git:/boats/a.wright?{"path":…,"ref":…}`.
// All files of one state have keys that differ in their path alone, as those on a disk have.

const withQuery =
  /^(?<scheme>[a-z][a-z0-9+.-]*):(?:\/\/(?<authority>[^/?#]*))?(?<path>\/(?!\/)[^?#]*)\?(?<query>[^#]*)$/is
const revisionKeys = /^(?<state>(?<scheme>[^:/]+):\/\/(?<authority>[^/?]*)\?(?<query>[^/]*))(?<path>\/.*)$/s

/** Whether a text is an older state of a file: nobody can change it. */
export const isRevision = (uri: string): boolean => withQuery.test(uri) || revisionKeys.test(uri)

/** The key of a file in an older state; undefined for any other. */
export function revisionKey(uri: string): string | undefined {
  const { scheme = '', authority = '', path, query } = withQuery.exec(uri)?.groups ?? {}
  if (path === undefined || query === undefined) return undefined
  const plain = unescaped(path).replace(/^\/[A-Z]:/, (drive) => drive.toLowerCase())
  return `${scheme.toLowerCase()}://${authority}?${encodeURIComponent(withoutPath(unescaped(query), plain))}${plain}`
}

/** The URI of such a key; undefined for any other. */
export function revisionUri(key: string): string | undefined {
  const { scheme, authority, query = '', path = '' } = revisionKeys.exec(key)?.groups ?? {}
  if (scheme === undefined) return undefined
  const escaped = path.split('/').map(encodeURIComponent).join('/')
  const whole = encodeURIComponent(withPath(decodeURIComponent(query), path))
  return `${scheme}:${authority ? `//${authority}` : ''}${escaped}?${whole}`
}

/** What comes before the path in the keys of all files of the same state. */
export const stateOf = (key: string): string | undefined => revisionKeys.exec(key)?.groups?.['state']

/** Stands in a query where the path of the file was: how many segments of it were left out, and which way its slashes lean. */
const place = (dropped: number, slash: '/' | '\\'): string => `\0${slash}${dropped}`
const placed = /^\0(?<slash>[/\\])(?<dropped>\d+)$/

/** A query that says the path again, whole or from some folder on, says it without. */
const withoutPath = (query: string, path: string): string =>
  mapTexts(query, (text) => {
    const slash = text.includes('\\') ? '\\' : '/'
    const stated = text.replaceAll('\\', '/').replace(/^[A-Z]:/, (drive) => drive.toLowerCase())
    if (stated === path) return place(0, slash)
    if (stated === '' || !path.endsWith(`/${stated}`)) return text
    return place(path.split('/').length - stated.split('/').length, slash)
  })

const withPath = (query: string, path: string): string =>
  mapTexts(query, (text) => {
    const { slash, dropped } = placed.exec(text)?.groups ?? {}
    return slash ? path.split('/').slice(Number(dropped)).join(slash) : text
  })

/** A query as data has each of its texts changed; any other stays as it is. */
function mapTexts(query: string, change: (text: string) => string): string {
  try {
    return JSON.stringify(JSON.parse(query), (_, value) =>
      typeof value === 'string' ? change(value) : value,
    )
  } catch {
    return query
  }
}

function unescaped(text: string): string {
  try {
    return decodeURIComponent(text)
  } catch {
    return text
  }
}
