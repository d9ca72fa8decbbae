import { findUnit } from '../quantity/units.ts'
import type { Entry, Part, Span } from '../syntax/tree.ts'

/** `20 mm +3 mm`, `shaft.length -2 mm`: an amount whose sign touches it, behind another. It is no sum, and no tolerance. */
export function touchingSign(entries: readonly Entry[], text: string): Span | undefined {
  for (const { parts } of entries)
    for (let i = 1; i < parts.length; i++) {
      const [before, part] = [parts[i - 1], parts[i]]
      if (before && part && isSigned(part, text) && isAmount(before) && !isPlace(before, part))
        return part.span
    }
  return undefined
}

const isSigned = ({ type, span }: Part, text: string): boolean =>
  (type === 'amount' || type === 'operation') && /[+\-\u2212]/.test(text[span.start] ?? '')

const isAmount = (part: Part): boolean =>
  part.type === 'amount' ||
  part.type === 'operation' ||
  part.type === 'negated' ||
  part.type === 'two-sided' ||
  (part.type === 'word' && part.text.includes('.'))

/** `30 deg -0.02 mm`: the angle is where the length was read. */
function isPlace(before: Part, part: Part): boolean {
  const [angle, other] = [before, part].map((of) => kindOf(of))
  return angle === 'angle' && other !== 'angle'
}

const kindOf = (part: Part): string | undefined =>
  part.type === 'amount' && part.unit ? findUnit(part.unit.text)?.kind : undefined
