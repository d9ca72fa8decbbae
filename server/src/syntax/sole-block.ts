import { conflictsIn } from './conflicts.ts'
import { deepest } from './tokens.ts'

export interface Heading {
  readonly kind: string
  readonly name: string | undefined
}

const word = '[A-Za-z][A-Za-z0-9-]*'
const nothing = /^[ \t]*(?:#.*)?$/
const opening = new RegExp(
  `^[ \\t]*(${word})(?:[ \\t]+"[^"\\\\{}#]*"|[ \\t]+(${word})(?:[ \\t]+${word})?)?[ \\t]*\\{[^{}"#]*(\\}?)[ \\t]*(?:#.*)?$`,
)
const closing = /^[ \t]*\}[ \t]*(?:#.*)?$/
const brace = /[{}]/
const lineEnd = /\r\n?|\n/

/** The heading of a section that is one block and nothing else, where its lines show that. Undefined where they do not: then it has to be parsed.
 * Only plain lines count. No token goes beyond its line, and in a line without quotes each brace before a # is one. */
export function soleBlock(text: string): Heading | undefined {
  if (conflictsIn(text).length > 0) return undefined
  let depth = text.split('(').length
  const top = depth
  let heading: Heading | undefined
  for (const line of text.split(lineEnd)) {
    if (depth === top ? nothing.test(line) : !brace.test(line)) continue
    if (depth > top && closing.test(line)) {
      depth -= 1
      continue
    }
    const [, kind, name, closed] = opening.exec(line) ?? []
    if (kind === undefined || (depth === top && heading) || depth >= deepest) return undefined
    heading ??= { kind, name }
    if (closed === '') depth += 1
  }
  return depth === top ? heading : undefined
}
