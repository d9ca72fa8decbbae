import type { Place } from '../../job/model.ts'
import { elide } from '../../quantity/elide.ts'
import { canBe } from '../../vocabulary/fitting-units.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { declaredAt } from '../declared-at.ts'
import { useNearest } from '../fix-text.ts'

/** The plain number that a unit stands behind. */
const numberBefore = ({ section, span }: Place): string | undefined =>
  /[\d./]+(?=\s*$)/.exec(section.text.slice(Math.max(0, span.start - 40), span.start))?.[0]

export default problemCheck({
  id: 'job/unit-unknown',
  problem: 'unknown-unit',
  severity: 'error',
  title: 'Unit that is not known',
  why: 'A unit that cannot be told cannot be worked with.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mn
#                  ^^ not a unit
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p) => ({
    message: `${elide(p.unit)} is not a unit known here.`,
    todo: p.nearest ? `Did you mean ${p.nearest}?` : 'Write one of the units in the reference.',
    found: elide(p.unit),
    ...(p.nearest && { data: { nearest: p.nearest } }),
  }),
  fixes: ({ at, data }, { block }) => {
    const near = data?.nearest
    const number = numberBefore(at)
    if (near === undefined || (number !== undefined && !canBe(number, near, declaredAt(block, at)))) return []
    // Letters of a unit say something by their case, m is milli and M mega: none is put right unasked.
    return useNearest(at, near).map(({ safe: _, ...fix }) => fix)
  },
})
