import { allowedBy, type Limits, within } from '../limits.ts'
import { isTooLong, notThis, type Placed, type Shape } from '../shape.ts'

const wanted = 'lengths separated by commas: `0.05 mm, 0.1 mm, 0.2 mm`'

const limits: Limits = { min: 1e-6, max: 0.1 }

const maxLengths = 40

/** A stock of lengths, such as shims: `0.05 mm, 0.1 mm, 0.2 mm`. */
export const lengths: Shape<readonly Placed<{ readonly value: number }>[]> = {
  words: wanted,
  forms: [
    {
      entries: [[{ label: 'length', doc: 'One of the lengths, with its unit.', quantity: 'length' }]],
      again: true,
    },
  ],
  quantity: 'length',
  allowed: allowedBy(limits),
  read: (entries, reader) => {
    if (isTooLong(entries, reader, 'lengths', maxLengths)) return undefined
    if (entries.some((entry) => entry.parts.length !== 1)) return notThis(entries, reader, wanted)
    const parts = entries.flatMap((entry) => entry.parts)
    const values = parts.map((part) => reader.amount(part, 'length'))
    const list = parts.flatMap((part, i) => {
      const written = { span: part.span, parts: [part, ...parts], kind: 'length' } as const
      const value = within(values[i], limits, written, reader)
      return value === undefined ? [] : [{ value, span: part.span }]
    })
    return list.length === entries.length ? list : undefined
  },
}
