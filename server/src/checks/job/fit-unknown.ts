import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/fit-unknown',
  problem: 'unknown-fit',
  severity: 'error',
  title: 'Unknown tolerance class',
  why: 'Without a known class, the limits of the size cannot be calculated.',
  source: theLanguage,
  fires: `shaft {
  diameter: 35 mm k6
#                 ^^ not known here
}`,
  quiet: `shaft { diameter: 35 mm h9 }`,
  words: (p) => ({
    message: `The limits of ${elide(p.text)} are not known here.`,
    detail: 'Known are h, H, js and JS of grades 5 to 11, up to 250 mm.',
    todo: 'Write the limits themselves, such as 35 mm +0/-0.062 mm.',
    found: elide(p.text),
  }),
})
