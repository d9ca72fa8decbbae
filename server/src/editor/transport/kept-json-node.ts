import type { ContentTypeEncoder, Message } from 'vscode-languageserver/node'
import { memoizeByIdentity } from '../../common/memoize-by-identity.ts'

/** A message with findings, which is most of what is sent. */
interface WithFindings {
  readonly params?: { readonly diagnostics?: readonly object[] }
  readonly result?: { readonly kind?: string; readonly items?: readonly object[] }
}

/** With the comma before it. */
const bytesOf = memoizeByIdentity((finding: object) => Buffer.from(`,${JSON.stringify(finding)}`))

/** JSON of a message. While somebody types, most findings stay the same objects, and so do their bytes: a file may have hundreds. */
function encode(message: Message): Buffer {
  const { params, result } = message as WithFindings
  if (params?.diagnostics)
    return withItems(
      { ...message, params: { ...params, diagnostics: [] } },
      'diagnostics',
      params.diagnostics,
    )
  if (result?.kind === 'full' && result.items)
    return withItems({ ...message, result: { ...result, items: [] } }, 'items', result.items)
  return Buffer.from(JSON.stringify(message))
}

/** Puts items into the list of that name, which is empty. In a text the quotes around the name would stand after a backslash. */
function withItems(message: object, name: string, items: readonly object[]): Buffer {
  const json = JSON.stringify(message)
  const at = json.indexOf(`"${name}":[]`) + name.length + 4
  const [first, ...others] = items.map(bytesOf)
  const listed = first ? [first.subarray(1), ...others] : []
  return Buffer.concat([Buffer.from(json.slice(0, at)), ...listed, Buffer.from(json.slice(at))])
}

export const keptJson: ContentTypeEncoder = {
  name: 'application/json',
  encode: (message) => Promise.resolve(encode(message)),
}
