import { findKind } from '../../vocabulary/index.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { useNearest } from '../fix-text.ts'
import { oneLine } from '../one-line.ts'

/** What was written as it could stand: `reading dry 1` as `reading dry-1`, `foot 1` as `foot foot-1`. */
function meant(kind: string, heading: string, expected: string): string | undefined {
  const words = heading.slice(kind.length).trim().replaceAll('"', '')
  if (!/^[\w -]+$/.test(words)) return undefined
  if (expected.startsWith('a title')) return `${kind} "${words}"`
  if (!expected.startsWith('a name')) return undefined
  const name = words.replaceAll(' ', '-')
  return `${kind} ${/^[A-Za-z]/.test(name) ? name : `${kind}-${name}`}`
}

/** The heading of the example of the kind. */
const usual = (kind: string): string => findKind(kind)?.example.split(' {', 1)[0] ?? kind

export default problemCheck({
  id: 'job/heading-unclear',
  problem: 'heading',
  severity: 'error',
  title: 'Heading that cannot be read',
  why: 'The heading names the block. Without a name, nothing can refer to it.',
  source: theLanguage,
  fires: `drive main line {
# <- a name
}`,
  quiet: `drive main-line { }`,
  words: (p, written) => {
    const near = meant(p.kind, written, p.expected)
    return {
      ...oneLine(
        `The heading of a ${p.kind} block is ${p.expected}.`,
        `The heading of a ${p.kind} block is not clear.`,
      ),
      todo: `Write it like this: ${near ?? usual(p.kind)}.`,
      limit: p.expected,
      ...(near && { data: { nearest: near } }),
    }
  },
  fixes: ({ at, data }) => useNearest(at, data?.nearest),
})
