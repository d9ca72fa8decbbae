import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/number-unreadable',
  problem: 'not-a-number',
  severity: 'error',
  title: 'Number that cannot be read',
  why: 'Nothing can be calculated from a number that cannot be read.',
  source: theLanguage,
  fires: `seal {
  free-length: 1/0 mm
#              ^^^^^^ not a number
}`,
  quiet: `seal { free-length: 1/2 in }`,
  words: (p) => ({
    message: `${elide(p.text)} is not a number that can be used here.`,
    todo: 'Write it as 35, 35.2, 3/4 or 1-1/4.',
    found: elide(p.text),
  }),
})
