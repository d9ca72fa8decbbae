import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { textAt, writeMeant } from '../fix-text.ts'

export default problemCheck({
  id: 'job/thousands-separator',
  problem: 'thousands-separator',
  severity: 'error',
  title: 'Thousands separator',
  why: 'Spaces, commas and points inside a number mean different things in different countries.',
  source: theLanguage,
  fires: `motor main {
  power: 15 000 W
#        ^^^^^^^^ 15000 W
}`,
  quiet: `motor main { power: 15000 W }`,
  words: (p, written) => ({
    message: `${written} has a thousands separator. Numbers are written without.`,
    todo: `Write ${elide(p.meant)}.`,
    found: written,
    data: { replace: p.meant },
  }),
  fixes: ({ at, data }) =>
    writeMeant(at, data?.replace).map((fix) => ({
      ...fix,
      // A comma may be missing where there is a space.
      ...(!/\d (?=[\d,])|, /.test(textAt(at)) && { safe: true }),
    })),
})
