import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/fit-unknown',
  problem: 'unknown-fit',
  severity: 'error',
  title: 'Tolerance class that is not known here',
  why: 'Its limits cannot be worked out.',
  source: theLanguage,
  fires: `shaft {
  diameter: 35 mm k6
#                 ^^ not known here
}`,
  quiet: `shaft { diameter: 35 mm h9 }`,
  words: (p) => ({
    message: `The limits of ${elide(p.text)} are not known here: h, H, js and JS of grades 5 to 11 are, up to 250 mm.`,
    todo: 'Write the limits themselves, such as 35 mm +0/-0.062 mm.',
    found: elide(p.text),
  }),
})
