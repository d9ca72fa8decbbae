import type { Block } from '../../job/model.ts'
import { isDate } from '../../vocabulary/shape.ts'
import { fileCheck, type Reported, theLanguage } from '../check.ts'

const seal = (day: string) => `seal {
  free-length: 148 mm [measured ${day}]
}`

/** Days of the block's own measurements, and of those inside it, that are after today. */
function after(today: string, block: Block): readonly Reported[] {
  const own = [...block.facts.values()].flatMap(({ node, at, origin }) => {
    const [word, day] = node.provenance?.words ?? []
    if (origin || word?.text !== 'measured' || !day || !isDate(day.text)) return []
    const date = day.text.slice(0, 10)
    if (date <= today) return []
    return [
      {
        at: { section: at.section, span: day.span },
        message: `The measurement is dated ${date}, which is after today.`,
        todo: 'Correct the date. If it is right, check the date of this computer.',
        found: date,
        limit: `at most ${today}`,
      },
    ]
  })
  return [...own, ...block.children.flatMap((child) => after(today, child))]
}

export default fileCheck({
  id: 'job/measured-in-future',
  severity: 'error',
  title: 'Measurement dated after today',
  why: 'Nothing can have been measured after today. With a wrong date, nobody can tell which measurement is the last.',
  source: theLanguage,
  fires: seal('9999-03-04').replace('\n}', '\n#                               ^^^^^^^^^^ after today\n}'),
  quiet: seal('2020-03-04'),
  file: ({ blocks, today }) => blocks.flatMap((block) => after(today, block)),
})
