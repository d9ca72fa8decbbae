import { unquoted } from '../../syntax/leaves.ts'
import { sources } from '../../syntax/tokens.ts'

const quoted = [sources.text, sources.openText, sources.curlyText].map((source) => new RegExp(source, 'y'))
const gap = /[^\S\r\n\u2028\u2029]*/y

/** Every path that could be that of a `use` line, without reading the tree of the text: all that there are, and a few that are none (in a
 * comment). */
export function writtenUses(text: string): readonly string[] {
  const paths: string[] = []
  for (let at = text.indexOf('use'); at >= 0; at = text.indexOf('use', at + 3)) {
    gap.lastIndex = at + 3
    gap.test(text)
    for (const pattern of quoted) {
      pattern.lastIndex = gap.lastIndex
      const [image] = pattern.exec(text) ?? []
      if (image !== undefined) paths.push(unquoted(image))
    }
  }
  return paths
}
