import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/duplicate',
  problem: 'duplicate',
  severity: 'error',
  title: 'Said twice',
  why: 'Of two values for one thing, one is wrong. The first is taken.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mm
  free-length: 150 mm
# ^^^^^^^^^^^ twice
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p) => ({
    message: `${elide(p.what)} is there twice; the first is taken.`,
    todo: 'Keep the right one.',
    found: elide(p.what),
    related: [{ at: p.first, message: 'the first' }],
  }),
})
