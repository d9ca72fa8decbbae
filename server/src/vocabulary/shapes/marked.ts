import { type Kind, kinds } from '../../quantity/kinds.ts'
import { allowedBy, type Limits, within } from '../limits.ts'
import { isTooLong, notThis, type Placed, type Shape } from '../shape.ts'

/** What was measured at a terminal, or between two, SI. */
export interface Marked {
  readonly mark: string
  readonly value: number
}

interface Described {
  readonly kind: Kind
  readonly limits: Limits
  /** What the marks are of, in words: `terminals`. */
  readonly marks: string
  readonly example: string
}

/** Amounts, each with the mark of what it is of: `U-V 14.2 mohm, V-W 14.3 mohm, W-U 14.1 mohm`. A mark that begins with a digit is put in quotes. */
export function marked({ kind, limits, marks, example }: Described): Shape<readonly Placed<Marked>[]> {
  const wanted = `${marks}, each with ${kinds[kind].words}: \`${example}\``
  return {
    words: wanted,
    quantity: kind,
    mayQuote: true,
    allowed: allowedBy(limits),
    forms: [
      {
        entries: [
          [
            { label: 'mark', doc: `The ${marks}, as marked.` },
            { label: 'amount', doc: 'What was measured there, with its unit.', quantity: kind },
          ],
        ],
        again: true,
      },
    ],
    read: (entries, reader) => {
      if (isTooLong(entries, reader, 'amounts')) return undefined
      const list: Placed<Marked>[] = []
      for (const entry of entries) {
        const [mark, amount, more] = entry.parts
        if ((mark?.type !== 'word' && mark?.type !== 'text') || !amount || more)
          return notThis([entry], reader, wanted)
        const written = { span: amount.span, parts: [amount], kind }
        const value = within(reader.amount(amount, kind), limits, written, reader)
        if (value === undefined) return undefined
        list.push({ mark: mark.text, value, span: entry.span })
      }
      return list
    },
  }
}
