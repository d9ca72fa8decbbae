import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { writeMeant } from '../fix-text.ts'

export default problemCheck({
  id: 'job/value-quoted',
  problem: 'value-quoted',
  severity: 'error',
  title: 'Value in quotes',
  why: 'A value in quotes is a text, and nothing is calculated from a text or looked up by it. Write amounts, dates, names of blocks and words of the language without quotes.',
  source: theLanguage,
  fires: `motor main {
  power: "15 kW"
#        ^^^^^^^ without quotes
}`,
  quiet: `motor main { power: 15 kW }`,
  words: ({ meant }, written) => ({
    message: `${written} is in quotes, so it is a text. This value is written without quotes.`,
    todo: `Write ${elide(meant)}.`,
    found: written,
    data: { replace: meant },
  }),
  fixes: ({ at, data }) => writeMeant(at, data?.replace).map((fix) => ({ ...fix, safe: true })),
})
