import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { useNearest } from '../fix-text.ts'

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
  fixes: ({ at, data }) => useNearest(at, data?.nearest),
})
