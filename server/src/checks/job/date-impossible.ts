import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/date-impossible',
  problem: 'no-such-date',
  severity: 'error',
  title: 'Day that does not exist',
  why: 'Dates put the log in order and end a concession. A day that does not exist does neither.',
  source: theLanguage,
  fires: `drive main {
  reading dry-1 { taken: 2026-02-30  gauge: 0.02 mm  gaps: top 1 mm, starboard 1 mm, bottom 1 mm, port 1 mm }
#                        ^^^^^^^^^^ no such day
}`,
  quiet: `drive main {
  reading dry-1 { taken: 2026-02-28  gauge: 0.02 mm  gaps: top 1 mm, starboard 1 mm, bottom 1 mm, port 1 mm }
}`,
  words: (p) => ({
    message: `There is no such day or time as ${elide(p.text)}.`,
    todo: 'Write year-month-day, such as 2026-03-04.',
    found: elide(p.text),
  }),
})
