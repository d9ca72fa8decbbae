import { canBe } from '../../vocabulary/fitting-units.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { declaredAt } from '../declared-at.ts'
import { replace, textAt } from '../fix-text.ts'

export default problemCheck({
  id: 'job/value-outside',
  problem: 'outside-allowed',
  severity: 'error',
  title: 'Value outside its range',
  why: 'No real part has such a value. Most often a digit or a unit is wrong.',
  source: theLanguage,
  fires: `seal {
  free-length: 0 mm
#              ^^^^ outside its range: 1 mm to 2000 mm
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p, written) => ({
    message: `${written} is outside its range: ${p.allowed}.`,
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
