import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/refers-to-itself',
  problem: 'refers-to-itself',
  severity: 'error',
  title: 'Value that depends on itself',
  why: 'It can never be worked out.',
  source: theLanguage,
  fires: `seal {
  free-length: free-length + 2 mm
#              ^^^^^^^^^^^^^^^^^^ itself
}`,
  quiet: `seal { free-length: 148 mm + 2 mm }`,
  words: (p) => ({
    message: `${elide(p.path)} depends on itself.`,
    todo: 'Write the value itself.',
    found: elide(p.path),
  }),
})
