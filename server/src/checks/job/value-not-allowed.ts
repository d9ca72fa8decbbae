import type { ValueProblem } from '../../vocabulary/reader.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { replace, textAt, useNearest } from '../fix-text.ts'
import { oneLine } from '../one-line.ts'

type NotThis = Extract<ValueProblem, { type: 'not-this-value' }>

function todo({ expected, nearest, example }: NotThis): string {
  if (nearest !== undefined) return `Did you mean ${nearest}?`
  if (expected.startsWith('one of ') || example === undefined) return `Write ${expected}.`
  return `Write a value such as ${example}.`
}

/** Whether quotes round the words make them one text. */
const mayQuote = (written: string): boolean => !/["\\]/.test(written.replace(/"$/, ''))

/** In quotes, of which the closing one may be there: `Launch 07"`. */
const quoted = (written: string): string => `"${written.replace(/"$/, '')}"`

export default problemCheck({
  id: 'job/value-not-allowed',
  problem: 'not-this-value',
  severity: 'error',
  title: 'Value not allowed',
  why: 'A value that cannot be read is not checked.',
  source: theLanguage,
  fires: `coupling {
  kind: rigit
#       ^^^^^ rigid
}`,
  quiet: `coupling { kind: rigid }`,
  words: (p, written) => ({
    ...oneLine(`${written} cannot be read as ${p.expected}.`, `${written} is not allowed here.`),
    todo: p.quotes && mayQuote(written) ? `Put it in quotes: ${quoted(written)}.` : todo(p),
    found: written,
    limit: p.expected,
    ...((p.nearest ?? p.quotes) && { data: { ...(p.nearest && { nearest: p.nearest }), quotes: p.quotes } }),
  }),
  fixes: ({ at, data }) => {
    const written = textAt(at)
    if (data?.['quotes'] && mayQuote(written))
      return [{ title: `Write ${quoted(written)}`, edits: [replace(at, quoted(written))], preferred: true }]
    return useNearest(at, data?.nearest).map((fix) => ({
      ...fix,
      // Limits in the wrong order mean the same the other way round.
      ...(data?.nearest?.includes('..') && { safe: true as const }),
    }))
  },
})
