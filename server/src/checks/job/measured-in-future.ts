import { memoizeByIdentity } from '../../common/memoize-by-identity.ts'
import type { Block, Place } from '../../job/model.ts'
import { isDate } from '../../vocabulary/shape.ts'
import { fileCheck, type Reported, theLanguage } from '../check.ts'

const seal = (day: string) => `seal {
  free-length: 148 mm [measured ${day}]
}`

interface Day {
  readonly date: string
  readonly at: Place
}

/** Days of the measurements of a block as it is bound, and of those inside it. */
const daysIn = memoizeByIdentity((block: Block): readonly Day[] => {
  const own = [...block.facts.values()].flatMap(({ node, at, origin }) => {
    const [word, day] = node.provenance?.words ?? []
    if (origin || word?.text !== 'measured' || !day || !isDate(day.text)) return []
    return [{ date: day.text.slice(0, 10), at: { section: at.section, span: day.span } }]
  })
  return [...own, ...block.children.flatMap(daysIn)]
})

const dayAfter = (today: string, { date, at }: Day): Reported => ({
  at,
  message: `The measurement is dated ${date}, which is after today.`,
  todo: 'Correct the date. If it is right, check the date of this computer.',
  found: date,
  limit: `at most ${today}`,
})

export default fileCheck({
  id: 'job/measured-in-future',
  severity: 'error',
  title: 'Measurement dated after today',
  why: 'Nothing can have been measured after today. With a wrong date, nobody can tell which measurement is the last.',
  source: theLanguage,
  fires: seal('9999-03-04').replace('\n}', '\n#                               ^^^^^^^^^^ after today\n}'),
  quiet: seal('2020-03-04'),
  file: ({ blocks, today }) =>
    blocks.flatMap((block) =>
      daysIn(block)
        .filter(({ date }) => date > today)
        .map((day) => dayAfter(today, day)),
    ),
})
