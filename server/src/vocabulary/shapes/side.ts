import { allowedBy, bounded, type Limits, unitIn, within } from '../limits.ts'
import { notThis, type Shape } from '../shape.ts'

const wanted = 'a length and its side: `140 mm port`, `140 mm starboard`'

const limits: Limits = { min: -10, max: 10 }

/** Distance to a side of the shaft line, metres, starboard positive: `140 mm port`. */
export const side: Shape<number> = {
  words: wanted,
  quantity: 'length',
  choices: ['port', 'starboard'],
  allowed: allowedBy(limits),
  schema: bounded(limits),
  read: (entries, reader) => {
    const [length, word, more] = entries[0]?.parts ?? []
    if (!length || entries.length !== 1 || more) return notThis(entries, reader, wanted)
    const written = { span: length.span, unit: unitIn([length]) }
    const value = within(reader.amount(length, 'length'), limits, written, reader)
    if (value === undefined) return undefined
    if (!word && value === 0) return 0
    if (word?.type !== 'word' || (word.text !== 'port' && word.text !== 'starboard'))
      return notThis(entries, reader, wanted)
    return value === 0 ? 0 : word.text === 'port' ? -value : value
  },
}
