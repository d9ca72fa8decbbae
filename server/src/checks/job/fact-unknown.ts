import { elide } from '../../quantity/elide.ts'
import { findKind } from '../../vocabulary/index.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { rewriteFact, useNearest } from '../fix-text.ts'

/** A block of bare lines has no names before a colon. */
function howItIsWritten(kind: string): string {
  const { bare = '', facts } = findKind(kind) ?? {}
  const example = facts?.[bare]?.example
  return example ? `Write it like this: \`${example}\`.` : `The facts of ${kind} are in the reference.`
}

function todoFor({ kind, nearest, now }: { kind: string; nearest?: string; now?: string }): string {
  if (now) return `It is now written as \`${elide(now)}\`.`
  return nearest ? `Did you mean ${nearest}?` : howItIsWritten(kind)
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
    todo: todoFor(p),
    found: elide(p.name),
    ...(p.nearest && { data: { nearest: p.nearest } }),
    ...(p.now && { data: { replace: p.now } }),
  }),
  fixes: ({ at, data }, { block }) =>
    data?.replace === undefined ? useNearest(at, data?.nearest) : rewriteFact(block, at, data.replace),
})
