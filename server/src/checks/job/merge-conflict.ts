import { memoizeByIdentity } from '../../common/memoize-by-identity.ts'
import type { Section } from '../../job/model.ts'
import { type Conflict, conflictsIn } from '../../syntax/conflicts.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { replace, takeOut } from '../fix-text.ts'

const conflictAt = memoizeByIdentity(
  ({ text }: Section): ReadonlyMap<number, Conflict> =>
    new Map(conflictsIn(text).map((conflict) => [conflict.span.start, conflict])),
)

/** The last line's own end stays behind what is kept. */
const withoutEnd = (lines: string): string => lines.replace(/(\r\n|[\n\r])$/, '')

export default problemCheck({
  id: 'job/merge-conflict',
  problem: 'merge-conflict',
  severity: 'error',
  title: 'Merge conflict',
  why: 'There are two versions of the same lines, and nobody has decided which one counts.',
  source: theLanguage,
  fires: `seal {
<<<<<<< ours
#<- two versions
  free-length: 148 mm
=======
  free-length: 184 mm
>>>>>>> theirs
}`,
  quiet: `seal {
  free-length: 148 mm
}`,
  words: () => ({
    message: 'A merge has left two versions of these lines. Until one is chosen, only the first is read.',
    todo: 'Keep the correct lines. Delete the others and the lines of <, = and >.',
  }),
  fixes: ({ at: { section, span } }) => {
    const conflict = conflictAt(section).get(span.start)
    if (!conflict) return []
    const lines = section.text.slice(conflict.span.start, conflict.span.end).split(/(?<=\r\n|[\n\r])/)
    const begins = (sign: string): number => lines.findIndex((line) => line.startsWith(sign.repeat(7)))
    const [both, middle, end] = [begins('|'), begins('='), begins('>')]
    const keep = (which: string, kept: readonly string[]) => ({
      title: `Keep the ${which} version`,
      edits: [
        kept.length === 0
          ? takeOut(section, conflict.span)
          : replace({ section, span: conflict.span }, withoutEnd(kept.join(''))),
      ],
      uncovers: true as const,
    })
    return [
      keep('first', lines.slice(1, both < 0 ? middle : both)),
      keep('second', lines.slice(middle + 1, end)),
    ]
  },
})
