import { elide } from '../../quantity/elide.ts'
import { findKind } from '../../vocabulary/index.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { useNearest } from '../fix-text.ts'

/** A block of bare lines has no names before a colon. */
function howItIsWritten(kind: string): string {
  const { bare = '', facts } = findKind(kind) ?? {}
  const example = facts?.[bare]?.example
  return example ? `Write it like this: \`${example}\`.` : `The facts of ${kind} are in the reference.`
}

export default problemCheck({
  id: 'job/fact-unknown',
  problem: 'unknown-fact',
  severity: 'error',
  title: 'Unknown fact',
  why: 'A misspelt fact is not checked, and what depends on it is not known.',
  source: theLanguage,
  fires: `seal {
  free-lenght: 148 mm
# ^^^^^^^^^^^ free-length
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p) => ({
    message: `${p.kind} has no fact called ${elide(p.name)}.`,
    todo: p.nearest ? `Did you mean ${p.nearest}?` : howItIsWritten(p.kind),
    found: elide(p.name),
    ...(p.nearest && { data: { nearest: p.nearest } }),
  }),
  fixes: ({ at, data }) => useNearest(at, data?.nearest),
})
