import { z } from 'zod'
import { notThis, type Shape } from '../shape.ts'

const wanted = 'a length and its side: `140 mm port`, `140 mm starboard`'

/** Distance to a side of the shaft line, metres, starboard positive: `140 mm port`. */
export const side: Shape<number> = {
  words: wanted,
  quantity: 'length',
  choices: ['port', 'starboard'],
  allowed: { low: -10, high: 10 },
  schema: z.number().min(-10).max(10),
  read: (entries, reader) => {
    const [length, word, more] = entries[0]?.parts ?? []
    if (!length || entries.length !== 1 || more) return notThis(entries, reader, wanted)
    const value = reader.amount(length, 'length')
    if (value === undefined) return undefined
    if (!word && value === 0) return 0
    if (word?.type !== 'word' || (word.text !== 'port' && word.text !== 'starboard'))
      return notThis(entries, reader, wanted)
    return value === 0 ? 0 : word.text === 'port' ? -value : value
  },
}
