import { capital } from '../../common/capital.ts'
import { kinds } from '../../quantity/kinds.ts'
import { gaugesNamed, parseNumber } from '../../quantity/quantity.ts'
import { fittingUnits } from '../../vocabulary/fitting-units.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { declaredAt } from '../declared-at.ts'
import { insert, textAt } from '../fix-text.ts'

export default problemCheck({
  id: 'job/unit-missing',
  problem: 'no-unit',
  severity: 'error',
  title: 'Amount without its unit',
  why: 'A bare number can be millimetres to one reader and inches to the next. Every amount needs its unit.',
  source: theLanguage,
  fires: `seal {
  free-length: 148
#              ^^^ without a unit
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: ({ expected, or, likely }, written) => {
    const limit = [expected, ...(or ? [or] : [])].map((kind) => kinds[kind].words).join(' or ')
    const isGauge = gaugesNamed(written, expected).includes(likely) && parseNumber(written) === undefined
    return {
      message: isGauge
        ? `${written} is a wire gauge, but ${likely} is missing.`
        : `${capital(limit)} was expected; ${written} is a number without a unit.`,
      todo: isGauge ? `Write ${written} ${likely}.` : `Write the unit, such as ${written} ${likely}.`,
      found: written,
      limit,
      data: { kinds: [expected, ...(or ? [or] : [])] },
    }
  },
  fixes: ({ at, data }, { block, lookup }) => {
    const units = fittingUnits(textAt(at), data?.kinds ?? [], declaredAt(block, at), lookup?.system)
    return units.map((unit) => ({
      title: `Write ${textAt(at)} ${unit}`,
      edits: [insert(at.section, at.span.end, ` ${unit}`)],
      uncovers: true,
      // Of several only the person knows the one.
      ...(units.length === 1 && { preferred: true }),
    }))
  },
})
