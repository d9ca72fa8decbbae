import type { Meaning } from '../../job/model.ts'
import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { replace } from '../fix-text.ts'

const readAs = ({ write, comesTo }: Meaning): string => elide(comesTo ?? write)

/** `15000 W (15 kW)` */
const suggested = ({ write, comesTo }: Meaning): string =>
  elide(comesTo === undefined ? write : `${write} (${comesTo})`)

export default problemCheck({
  id: 'job/point-unclear',
  problem: 'point-unclear',
  severity: 'warning',
  title: 'Point that may separate thousands',
  why: 'In many countries 15.000 is fifteen thousand; here it is fifteen. Three decimals are common, above all in sizes such as 3.175 mm. So this finding appears only if the value is unlikely for its fact as it is read, and much more likely a thousand times as large.',
  source: theLanguage,
  fires: `motor main {
  power: 15.000 W
#        ^^^^^^^^ is read as 15 W
}`,
  quiet: `motor main { power: 15000 W }`,
  words: ({ read, thousands }, written) => ({
    message: `${written} is read as ${readAs(read)}, not as ${readAs(thousands)}.`,
    todo: `Write ${elide(thousands.write)} if you mean ${readAs(thousands)}, otherwise ${elide(read.write)}.`,
    found: written,
    data: { meanings: [thousands, read] },
  }),
  // None is preferred: only the person knows.
  fixes: ({ at, data }) =>
    ((data?.['meanings'] ?? []) as readonly Meaning[]).map((meaning) => ({
      title: `Write ${suggested(meaning)}`,
      edits: [replace(at, meaning.write)],
    })),
})
