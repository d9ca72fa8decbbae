import { canBe } from '../../vocabulary/fitting-units.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { declaredAt } from '../declared-at.ts'
import { insert, textAt } from '../fix-text.ts'

export default problemCheck({
  id: 'job/value-outside',
  problem: 'outside-allowed',
  severity: 'error',
  title: 'Value outside what the fact can be',
  why: 'No real part is like this: a digit or a unit has slipped.',
  source: theLanguage,
  fires: `seal {
  free-length: 0 mm
#              ^^^^ outside what this can be: 1 mm to 2000 mm
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p, written) => ({
    message: `${written} is outside what this can be: ${p.allowed}.`,
    todo: 'Check the number and its unit.',
    found: written,
    limit: p.allowed,
  }),
  fixes: ({ at }, { block }) => {
    const written = textAt(at)
    const [, number = ''] = /^(?:(?:min|max)\s+)?([\d.]+)$/.exec(written) ?? []
    const fact = declaredAt(block, at)
    // A share of something, which is 1 at most, was written as per cent.
    const isShare =
      fact?.shape.quantity === 'ratio' && (fact.shape.allowed?.high ?? Number.POSITIVE_INFINITY) <= 1
    return isShare && number !== '' && Number(number) > 1 && canBe(number, '%', fact)
      ? [
          {
            title: `Write ${written} %`,
            edits: [insert(at.section, at.span.end, ' %')],
            preferred: true,
            uncovers: true,
          },
        ]
      : []
  },
})
