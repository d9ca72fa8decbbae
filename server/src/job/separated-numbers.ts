import { readingsOf, separated } from '../quantity/separated-number.ts'
import { findUnit } from '../quantity/units.ts'
import type { Entry, Part, Span } from '../syntax/tree.ts'
import type { Fact } from '../vocabulary/block.ts'
import {
  meaningOf,
  type NumberContext,
  type NumberPart,
  numbersIn,
  type Ranked,
  takesLimits,
} from './meanings.ts'
import type { BindingProblem } from './model.ts'
import { type AmountPart, clearDecimals } from './unclear-points.ts'

interface SeparatedNumber {
  readonly span: Span
  readonly problem: Extract<
    BindingProblem,
    { type: 'decimal-comma' | 'thousands-separator' | 'comma-unclear' | 'not-a-number' }
  >
}

/** A value of more numbers is noise: what is found in these is enough to leave it unread. */
const maxSeparated = 100

/** The numbers of a value that have separators in them. A value with one is not read: a factor of a thousand must not slip in. */
export function separatedNumbers(
  entries: readonly Entry[],
  given: NumberContext,
): readonly SeparatedNumber[] {
  const numbers = withSpaced(entries, given)
  const parts = numbers.filter(mayBeSeparated).slice(0, maxSeparated)
  if (parts.length === 0) return []
  const broken = brokenNumber(numbers, given)
  if (broken) return [{ span: broken, problem: { type: 'not-a-number', text: textOf(broken, given) } }]
  const unit = numbers.find((part) => part.unit)?.unit?.text
  const written = parts.flatMap((part) => {
    const text = given.text.slice(part.span.start, part.span.end).replace(/\s*,\s*/g, ',')
    const [decimal, thousands] = [readAs(text, 'decimal'), readAs(text, 'thousands')]
    return decimal === text ? [] : [{ part, text, decimal, thousands }]
  })
  // Whoever writes 0,5 beside it means no list.
  const decimalsUsed = written.some(({ text }) => /^\D*0?,\d/.test(text))
  return written.map(({ part, text, decimal, thousands }): SeparatedNumber => {
    const mayBeList = part.type === 'amount' && isList(given.fact) && !decimalsUsed
    const list = mayBeList ? listMeant(text, part, unit, given) : limitsMeant(part, given)
    const ways = [decimal, ...(thousands === decimal ? [] : [thousands])]
    const isIrregular = [...text.matchAll(separated)].some(([number]) => readingsOf(number)?.isIrregular)
    if (ways.length === 1 && !list && !isIrregular) {
      const isDecimal = [...text.matchAll(separated)].some(([number]) => readingsOf(number)?.decimal)
      return {
        span: part.span,
        problem: { type: isDecimal ? 'decimal-comma' : 'thousands-separator', meant: decimal },
      }
    }
    const clear = part.type === 'amount' ? asDecimals(decimal, part, given) : decimal
    const single = [clear, ...ways.slice(1)].map((write) => meaningOf(write, part, unit, given))
    const meanings = [...single, ...(list ? [list] : [])].sort((a, b) => a.unlikely - b.unlikely)
    return { span: part.span, problem: { type: 'comma-unclear', meanings } }
  })
}

/** The numbers of a value, from left to right. One that has a space behind its comma, `15, 000 W`, is one. */
function withSpaced(entries: readonly Entry[], given: NumberContext): readonly NumberPart[] {
  const numbers: NumberPart[] = []
  let before: Part | undefined
  for (const { parts } of entries) {
    const [first] = parts
    const last = numbers.at(-1)
    const joined = before === last && first && last && spaced(last, first, given)
    if (joined) numbers.pop()
    if (joined) numbers.push(joined)
    for (const part of joined ? parts.slice(1) : parts)
      for (const number of numbersIn(part)) numbers.push(number)
    before = joined && parts.length === 1 ? joined : parts.at(-1)
  }
  return numbers
}

const textOf = ({ start, end }: Span, { text }: NumberContext): string => text.slice(start, end)

const between = (left: Part, right: Part, given: NumberContext): string =>
  textOf({ start: left.span.end, end: right.span.start }, given)

/** Numbers side by side that are neither one number nor two values: `1,50,000 W`, `1,5 000 W`. */
function brokenNumber(numbers: readonly NumberPart[], given: NumberContext): Span | undefined {
  for (const [i, right] of numbers.entries()) {
    const left = numbers[i - 1]
    if (right.unit?.text.startsWith('_') || /['’]/.test(given.text[right.span.end] ?? '')) return right.span
    if (left?.type !== 'amount' || left.unit || right.type !== 'amount') continue
    const gap = between(left, right, given)
    if (!/^[\s,.'’_]*$/.test(gap) || gap.includes('..')) continue
    const isTwo = /^\s*,\s*$/.test(gap) && mayFollowComma(right, given.fact)
    if (!isTwo) return { start: left.span.start, end: right.span.end }
  }
  return undefined
}

function spaced(left: NumberPart, right: Part, given: NumberContext): NumberPart | undefined {
  const { fact } = given
  if (left.type !== 'amount' || left.unit || right.type !== 'amount') return undefined
  // Touching it, the lexer would have taken it for one number.
  if (!/^(?:\s+,\s*|,\s+)$/.test(between(left, right, given))) return undefined
  const number = `${left.number},${right.number}`
  const mayBeTwo = mayFollowComma(right, fact) && !/^0\d\d$/.test(right.number)
  if (mayBeTwo || !readingsOf(number)) return undefined
  return { ...right, number, span: { start: left.span.start, end: right.span.end } }
}

/** Whether the amount may stand behind a comma of its own. */
function mayFollowComma({ unit }: NumberPart, { shape }: Fact): boolean {
  const kind = unit && findUnit(unit.text)?.kind
  const behind = shape.forms?.flatMap(({ again, entries }) => entries.slice(again ? -1 : 1)) ?? []
  return behind.some(([first]) => first?.quantity !== undefined && (!kind || kind === first.quantity))
}

const mayBeSeparated = (part: NumberPart): boolean =>
  part.type === 'two-sided' ? /[^\d.+\-−/ ]|\d \d/.test(part.text) : !/^-?\d*\.?\d*$/.test(part.number)

/** The text with each number in it written plainly, read the one way or else as it can be. */
const readAs = (text: string, way: 'decimal' | 'thousands'): string =>
  text.replace(separated, (number) => {
    const { decimal, thousands } = readingsOf(number) ?? {}
    return { decimal, thousands }[way] ?? decimal ?? thousands ?? number
  })

/** The text with its number so that no decimals can be taken for thousands. */
const asDecimals = (text: string, part: AmountPart, given: NumberContext): string =>
  text.replace(/[\d.]+/, (number) => clearDecimals({ ...part, number }, given))

/** Whether the fact is a list of plain amounts, which a comma parts: `0.05 mm, 0.1 mm`. */
const isList = ({ shape }: Fact): boolean =>
  shape.forms?.some(({ again, entries }) => again && entries.at(-1)?.length === 1) ?? false

/** `84, 108 V` as `84..108 V`, where the fact takes limits. */
function limitsMeant({ span }: NumberPart, given: NumberContext): Ranked | undefined {
  const [, low, high, unit = ''] = /^(\d[\d.]*)\s*,\s+(\d[\d.]*)(.*)$/.exec(textOf(span, given)) ?? []
  return takesLimits(given.fact) && Number(low) < Number(high)
    ? { write: `${low}..${high}${unit}`, unlikely: -1 }
    : undefined
}

/** `1,2 mm` as `1, 2 mm`, where each is a value that the list can have. */
function listMeant(
  text: string,
  part: NumberPart,
  unit: string | undefined,
  given: NumberContext,
): Ranked | undefined {
  const [number = ''] = text.match(separated) ?? []
  const each = number
    .split(',')
    .map((one) => meaningOf(one, { ...part, type: 'amount', number: one } as NumberPart, unit, given))
  if (each.length < 2 || each.some(({ isOutside }) => isOutside)) return undefined
  const own = part.unit ? ` ${part.unit.text}` : ''
  return {
    write: text.replace(number, number.replaceAll(',', `${own}, `)),
    unlikely: Math.max(...each.map(({ unlikely }) => unlikely)),
  }
}
