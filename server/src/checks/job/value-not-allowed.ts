import type { ValueProblem } from '../../vocabulary/reader.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { useNearest } from '../fix-text.ts'

type NotThis = Extract<ValueProblem, { type: 'not-this-value' }>

function todo({ expected, nearest, example }: NotThis): string {
  if (nearest !== undefined) return `Did you mean ${nearest}?`
  if (expected.startsWith('one of ') || example === undefined) return `Write ${expected}.`
  return `Write it like this: ${example}.`
}

export default problemCheck({
  id: 'job/value-not-allowed',
  problem: 'not-this-value',
  severity: 'error',
  title: 'Value of another form than expected',
  why: 'What cannot be read as it should be is not checked.',
  source: theLanguage,
  fires: `coupling {
  kind: rigit
#       ^^^^^ rigid
}`,
  quiet: `coupling { kind: rigid }`,
  words: (p, written) => ({
    message: `${written} cannot be read as ${p.expected}.`,
    todo: todo(p),
    found: written,
    limit: p.expected,
    ...(p.nearest && { data: { nearest: p.nearest } }),
  }),
  fixes: ({ at, data }) =>
    useNearest(at, data?.nearest).map((fix) => ({
      ...fix,
      // Limits in the wrong order mean the same the other way round.
      ...(data?.nearest?.includes('..') && { safe: true as const }),
    })),
})
