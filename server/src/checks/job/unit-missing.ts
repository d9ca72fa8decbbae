import { kinds } from '../../quantity/kinds.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { insert, textAt } from '../fix-text.ts'
import { fittingUnits } from '../fix-units.ts'

export default problemCheck({
  id: 'job/unit-missing',
  problem: 'no-unit',
  severity: 'error',
  title: 'Amount without its unit',
  why: 'A bare number can be millimetres to one reader and inches to the next. Every amount says its unit.',
  source: theLanguage,
  fires: `seal {
  free-length: 148
#              ^^^ without a unit
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p, written) => ({
    message: `${kinds[p.expected].words.replace(/^./, (c) => c.toUpperCase())} was expected; ${written} is a number without a unit.`,
    todo: `Write the unit, such as ${written} ${p.likely}.`,
    found: written,
    limit: kinds[p.expected].words,
    data: { unit: p.likely, kind: p.expected },
  }),
  fixes: ({ at, data }, ground) =>
    fittingUnits(at, data?.kind, ground).map((unit, i) => ({
      title: `Write ${textAt(at)} ${unit}`,
      edits: [insert(at.section, at.span.end, ` ${unit}`)],
      uncovers: true,
      ...(i === 0 && { preferred: true }),
    })),
})
