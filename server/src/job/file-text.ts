/** Bytes that a file or an open text may have. A job with a thousand readings has a tenth of it. */
export const largestFile = 5_000_000

/** Why a file is not read. */
export type Refusal =
  | { readonly type: 'file-too-large' }
  /** `encoding`: what it is instead, where it says so itself. */
  | { readonly type: 'file-not-utf8'; readonly encoding?: string }
  /** `why`: in words that follow "cannot be read:". */
  | { readonly type: 'file-unreadable'; readonly why: string; readonly isFolder?: true }

const utf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

/** The text of a file, with its byte order mark. Other bytes than UTF-8 are refused: they would be checked for what they are not, and not come
 * back as they were. */
export function textFrom(bytes: Uint8Array): string | Refusal {
  if (bytes.length > largestFile) return { type: 'file-too-large' }
  try {
    return utf8.decode(bytes)
  } catch {
    const encoding = markedEncoding(bytes)
    return { type: 'file-not-utf8', ...(encoding !== undefined && { encoding }) }
  }
}

/** What the byte order mark says, unless it is that of UTF-8 (Unicode 16.0, section 23.8). */
function markedEncoding([a, b, c, d]: Uint8Array): string | undefined {
  if ((a === 0xff && b === 0xfe && c === 0 && d === 0) || (a === 0 && b === 0 && c === 0xfe && d === 0xff))
    return 'UTF-32'
  return (a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff) ? 'UTF-16' : undefined
}

export const withoutMark = (text: string): string => text.replace(/^\uFEFF/, '')

/** How many bytes a text has in UTF-8. Half a character counts as the sign that stands for it in a file. */
export function utf8Length(text: string): number {
  let bytes = text.length
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i)
    if (code < 0x80) continue
    bytes += code < 0x800 ? 1 : 2
    if (code >= 0xd800 && code < 0xdc00 && isLowSurrogate(text.charCodeAt(i + 1))) i += 1 // both halves: 4 bytes
  }
  return bytes
}

const isLowSurrogate = (code: number): boolean => code >= 0xdc00 && code < 0xe000
