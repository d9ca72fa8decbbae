import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { textAt, writeMeant } from '../fix-text.ts'

export default problemCheck({
  id: 'job/decimal-comma',
  problem: 'decimal-comma',
  severity: 'error',
  title: 'Decimal comma',
  why: 'In a job file a comma separates values, and the decimal separator is a point. A comma inside a number could be read either way.',
  source: theLanguage,
  fires: `shaft {
  diameter: 35,2 mm
#           ^^^^^^^ 35.2 mm
}`,
  quiet: `shaft { diameter: 35.2 mm }`,
  words: (p, written) => ({
    message: `${written} has a decimal comma. Decimals have a point here.`,
    todo: `Write ${elide(p.meant)}.`,
    found: written,
    data: { replace: p.meant },
  }),
  fixes: ({ at, data }) =>
    writeMeant(at, data?.replace).map((fix) => ({
      ...fix,
      // With a space beside it, it may have been put between two values.
      ...(!/\s,|,\s/.test(textAt(at)) && { safe: true }),
    })),
})
