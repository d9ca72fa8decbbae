import type { Meaning } from '../../job/model.ts'
import { elide } from '../../quantity/elide.ts'
import { either } from '../../vocabulary/shape.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { replace } from '../fix-text.ts'

/** `15000 W (15 kW)` */
const suggested = ({ write, comesTo }: Meaning): string =>
  elide(comesTo === undefined ? write : `${write} (${comesTo})`)

export default problemCheck({
  id: 'job/comma-unclear',
  problem: 'comma-unclear',
  severity: 'error',
  title: 'Number that can be read two ways',
  why: 'For some readers a comma before three digits separates thousands, for others decimals: a factor of a thousand. In a list it may also separate two values. Separators that are not before groups of three may be slips.',
  source: theLanguage,
  fires: `motor main {
  power: 15,000 W
#        ^^^^^^^^ 15000 W (15 kW) or 15 W
}`,
  quiet: `motor main { power: 15000 W }`,
  words: ({ meanings }, written) => ({
    ...(meanings.length === 1
      ? {
          message: `${elide(written)} has separators that are not before groups of three.`,
          todo: `Write ${either(meanings.map(suggested))} if you mean that.`,
        }
      : {
          message: `${written} can be read as ${either(meanings.map(suggested))}.`,
          todo: 'Write the one that you mean.',
        }),
    found: written,
    data: { meanings },
  }),
  // None is preferred: only the person knows.
  fixes: ({ at, data }) =>
    ((data?.['meanings'] ?? []) as readonly Meaning[]).map((meaning) => ({
      title: `Write ${suggested(meaning)}`,
      edits: [replace(at, meaning.write)],
      uncovers: true,
      ...(meaning.isOutside && { leaves: ['job/value-outside'] }),
    })),
})
