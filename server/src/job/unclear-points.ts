import { readQuantity } from '../quantity/quantity.ts'
import { pointReadings } from '../quantity/separated-number.ts'
import type { Entry, Span } from '../syntax/tree.ts'
import { apart, meaningOf, type NumberContext, type NumberPart, numbersIn, usual } from './meanings.ts'
import type { BindingProblem } from './model.ts'

interface UnclearPoint {
  readonly span: Span
  readonly problem: Extract<BindingProblem, { type: 'point-unclear' }>
}

/** Numbers with a point before three digits, `15.000 W`, that would suit their fact far better if it parted thousands. They are read as they are
 * written; the question is only raised. */
export const unclearPoints = (entries: readonly Entry[], given: NumberContext): readonly UnclearPoint[] =>
  entries.flatMap(({ parts }) => {
    const numbers = parts.flatMap(numbersIn)
    // `1.084..1.108 kV`: both ends are in kV.
    const unit = numbers.find((part) => part.unit)?.unit
    return numbers.flatMap((part) => {
      const problem = part.type === 'amount' ? unclear(part, unit?.text, given) : undefined
      return problem ? [{ span: part.span, problem }] : []
    })
  })

export type AmountPart = Extract<NumberPart, { type: 'amount' }>

function unclear(
  part: AmountPart,
  unit: string | undefined,
  given: NumberContext,
): UnclearPoint['problem'] | undefined {
  const readings = pointReadings(part.number)
  if (!readings) return undefined
  const text = given.text.slice(part.span.start, part.span.end)
  const [read, thousands] = [readings.decimal, readings.thousands].map((number) =>
    meaningOf(text.replace(part.number, number), part, unit, given),
  )
  if (!read || !thousands || read.isOutside || thousands.isOutside) return undefined
  return isFarBetter(part, given, unit) ? { type: 'point-unclear', read, thousands } : undefined
}

/** A number with three decimals as it is written where they are decimals for sure: without zeros at its end, or with one more. */
export function clearDecimals(part: AmountPart, given: NumberContext): string {
  const readings = pointReadings(part.number)
  if (!readings) return part.number
  return part.number.endsWith('0') || isFarBetter(part, given) ? readings.decimal : part.number
}

/** Three decimals are usual in sizes, such as 3.175 mm: there the number read as it is written has to be out of all proportion. */
function isFarBetter({ number, unit }: AmountPart, { fact }: NumberContext, shared?: string): boolean {
  const { quantity } = fact.shape
  const si = quantity && siOf(number, unit?.text ?? shared)
  const common = usual(fact)
  if (!si || common === undefined) return false
  const [now, then] = [apart(si, common), apart(1000 * si, common)]
  return quantity === 'length' || quantity === 'area' ? now >= 2 && then <= 1 : now >= 1 && then < now
}

const siOf = (number: string, unit: string | undefined): number | undefined => {
  const read = readQuantity(number, unit)
  return read.ok ? read.value.si : undefined
}
