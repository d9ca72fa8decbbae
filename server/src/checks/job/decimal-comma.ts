import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { replace } from '../fix-text.ts'

export default problemCheck({
  id: 'job/decimal-comma',
  problem: 'decimal-comma',
  severity: 'error',
  title: 'Decimal comma',
  why: 'A comma parts one value from the next: 35,2 would be 35 and 2.',
  source: theLanguage,
  fires: `shaft {
  diameter: 35,2 mm
#           ^^^^^^^ 35.2 mm
}`,
  quiet: `shaft { diameter: 35.2 mm }`,
  words: (p) => ({
    message: `A decimal comma cannot be read: ${elide(p.meant)} was probably meant.`,
    todo: `Write ${elide(p.meant)}.`,
    data: { replace: p.meant },
  }),
  fixes: ({ at, data }) =>
    data?.replace
      ? [
          {
            title: `Write ${data.replace}`,
            edits: [replace(at, data.replace)],
            preferred: true,
            uncovers: true,
          },
        ]
      : [],
})
