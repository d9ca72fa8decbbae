import { findUnit } from '../quantity/units.ts'
import type { Entry, Part, Span } from '../syntax/tree.ts'

/** `20 mm +3 mm`, `shaft.length -2 mm`: an amount whose sign touches it, behind another. It is no sum, and no tolerance. */
export function touchingSign(entries: readonly Entry[], text: string): Span | undefined {
  for (const { parts } of entries)
    for (let i = 1; i < parts.length; i++) {
      const [before, part] = [parts[i - 1], parts[i]]
      if (before && part && isSigned(part, text) && isAmount(before) && !isPlace(before, part))
        return { start: part.span.start, end: Math.max(part.span.end, endOfLimits(text, part.span.start)) }
    }
  return undefined
}

/** Where limits that each have their unit end: `+3 mm/-2 mm`. */
function endOfLimits(text: string, start: number): number {
  const written = new RegExp(twoUnits.source, 'y')
  written.lastIndex = start
  return written.test(text) ? written.lastIndex : start
}

/** `+3 mm/-2 mm`: the two sides of a tolerance, each with the one unit. */
export const twoUnits = /[+]([\d.]+)[ \t]?([A-Za-zµ°%]+)[ \t]?\/[ \t]?[-\u2212]([\d.]+)[ \t]?\2(?![\w.])/

const isSigned = ({ type, span }: Part, text: string): boolean =>
  (type === 'amount' || type === 'operation') && /[+\-\u2010-\u2015\u2212]/.test(text[span.start] ?? '')

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
