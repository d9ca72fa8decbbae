import { formatNumber } from '../../quantity/format.ts'
import type { Part } from '../../syntax/tree.ts'
import { type Limits, within } from '../limits.ts'
import type { Reader } from '../reader.ts'
import { amount, type Shape } from '../shape.ts'

const limits: Limits = { min: 0.01, max: 100 }

const plain = amount('ratio', limits)

/** Turns of the motor for one turn of the shaft: `2.5`, and as a reduction `2.5:1`. Makers write a reduction of 2.5 as 2.5:1 and as 1:2.5, so a
 * ratio with a colon is always one; a gear that speeds the shaft up is written as a number below 1. */
export const gearRatio: Shape<number> = {
  ...plain,
  mayBeRatio: true,
  words: 'turns of the motor for one turn of the shaft: `2.5`, `2.5:1`',
  read: (entries, reader) => {
    const [part, more] = entries[0]?.parts ?? []
    if (more || entries.length > 1) return plain.read(entries, reader)
    const sides = part && sidesOfFraction(part)
    if (sides && Number(sides[0]) < Number(sides[1])) {
      const number = formatNumber(Number(sides[0]) / Number(sides[1]))
      reader.problem(part.span, { type: 'ratio-unclear', ratio: sides.join(':'), number })
      return undefined
    }
    if (part?.type !== 'proportion') return plain.read(entries, reader)
    const [left, right] = [sideOf(part.left, reader), sideOf(part.right, reader)]
    if (left === undefined || right === undefined) return undefined
    const turns = Math.max(left, right) / Math.min(left, right)
    return within(turns, limits, { span: part.span, parts: [part], kind: 'ratio' }, reader)
  },
}

/** `1/2`, `1 / 2.5` */
function sidesOfFraction(part: Part): readonly string[] | undefined {
  if (part.type === 'amount')
    return /^\d+\/\d+$/.test(part.number) && !part.unit ? part.number.split('/') : undefined
  const sides = part.type === 'operation' && part.operator === '/' ? [part.left, part.right] : []
  const numbers = sides.flatMap((side) => (side.type === 'amount' && !side.unit ? [side.number] : []))
  return numbers.length === 2 ? numbers : undefined
}

/** One side of the colon: above 0, or no ratio is. */
function sideOf(part: Part, reader: Reader): number | undefined {
  const value = reader.amount(part, 'ratio')
  return within(value, { over: 0 }, { span: part.span, parts: [part], kind: 'ratio' }, reader)
}
