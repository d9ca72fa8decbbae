import type { Entry, Span } from '../../syntax/tree.ts'
import { allowedBy, type Limits, within } from '../limits.ts'
import { isTooLong, notThis, type Placed, type Shape } from '../shape.ts'

/** How far a foot rose, m. */
export interface Lift {
  readonly name: string
  readonly lift: number
}

const wanted = 'feet and how far each rose: `aft-port 0.02 mm, fwd-port 0.03 mm`'

const limits: Limits = { min: 0, max: 0.05 }

/** Feet by name and how far each rose: `aft-port 0.02 mm, aft-stbd 0.03 mm`. */
export const lifts: Shape<readonly Placed<Lift>[]> = {
  words: wanted,
  quantity: 'length',
  forms: [
    {
      entries: [
        [
          { label: 'foot', doc: 'A foot, named as in the bed.' },
          { label: 'length', doc: 'How far it rose, with its unit.', quantity: 'length' },
        ],
      ],
      again: true,
    },
  ],
  allowed: allowedBy(limits),
  read: (entries: readonly Entry[], reader) => {
    if (isTooLong(entries, reader, 'feet')) return undefined
    const list: Placed<Lift>[] = []
    for (const entry of entries) {
      const [foot, length, more] = entry.parts
      if (foot?.type !== 'word' || !length || more) return notThis([entry], reader, wanted)
      const read = reader.amount(length, 'length')
      const lift = within(read, limits, { span: length.span, parts: [length], kind: 'length' }, reader)
      if (lift === undefined) return undefined
      list.push({ name: foot.text, lift, span: foot.span satisfies Span })
    }
    return list
  },
}
