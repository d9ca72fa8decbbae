import { findUnit } from '../../quantity/units.ts'
import type { Part } from '../../syntax/tree.ts'
import type { Limits } from '../limits.ts'
import { amount, notThis, type Shape } from '../shape.ts'

/** A constant in kelvin, such as B of a thermistor: `3380 K`. In °C or °F it would be read from another zero. */
export const kelvins = (limits: Limits): Shape<number> => {
  const words = 'a number of kelvins'
  const inner = amount('temperature', limits)
  return {
    forms: [
      { entries: [[{ label: 'constant', doc: 'The constant.', quantity: 'temperature', units: ['K'] }]] },
    ],
    ...inner,
    words,
    read: (entries, reader) => {
      const parts = entries.flatMap((entry) => entry.parts)
      return parts.some(hasOwnZero) ? notThis(entries, reader, words) : inner.read(entries, reader)
    },
  }
}

const hasOwnZero = (part: Part): boolean =>
  part.type === 'amount' && part.unit !== undefined && (findUnit(part.unit.text)?.offset ?? 0) !== 0
