import { canBe } from '../../vocabulary/fitting-units.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { declaredAt } from '../declared-at.ts'
import { replace, textAt } from '../fix-text.ts'

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
    const [, before = '', number = '', percent] = /^((?:min|max)\s+)?([\d.]+)(\s*%)?$/.exec(written) ?? []
    const fact = declaredAt(block, at)
    // A share of something, which is 1 at most: `96` was written for `96 %`, and `0.96 %` for `0.96`.
    const isShare =
      fact?.shape.quantity === 'ratio' && (fact.shape.allowed?.high ?? Number.POSITIVE_INFINITY) <= 1
    const meant = `${before}${number}${percent ? '' : ' %'}`
    return isShare && number !== '' && canBe(number, percent ? undefined : '%', fact)
      ? [{ title: `Write ${meant}`, edits: [replace(at, meant)], preferred: true, uncovers: true }]
      : []
  },
})
