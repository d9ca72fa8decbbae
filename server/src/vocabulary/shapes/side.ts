import type { Entry } from '../../syntax/tree.ts'
import { closestMatch } from '../closest-match.ts'
import { allowedBy, type Limits, within } from '../limits.ts'
import type { Reader } from '../reader.ts'
import { notThis, type Shape } from '../shape.ts'

const wanted = 'a length and its side: `140 mm port`, `140 mm starboard`'

const sides = ['port', 'starboard']

/** As written: the side says which way. */
const limits: Limits = { min: 0, max: 10 }

/** Says where the fault is: the side before its length, a side by another name, or no side at all. */
function notSided(entries: readonly Entry[], reader: Reader): undefined {
  const [first, second, more] = entries[0]?.parts ?? []
  const whole = entries.length === 1 && !more
  if (whole && first?.type === 'word' && second?.type === 'amount') {
    const length = [second.number, second.unit?.text ?? ''].join(' ').trim()
    const way = sides.includes(first.text) ? first.text : closestMatch(first.text, sides)
    if (way) return notThis(entries, reader, 'a length and its side, in that order', `${length} ${way}`)
  }
  if (whole && second?.type === 'word' && !sides.includes(second.text)) {
    return notThis(
      [{ parts: [second], span: second.span }],
      reader,
      'a side, port or starboard',
      closestMatch(second.text, sides),
    )
  }
  return notThis(entries, reader, wanted)
}

/** Distance to a side of the shaft line, metres, starboard positive: `140 mm port`. */
export const side: Shape<number> = {
  words: wanted,
  quantity: 'length',
  choices: sides,
  forms: [
    {
      entries: [
        [
          { label: 'length', doc: 'How far from the shaft line, with its unit.', quantity: 'length' },
          { label: 'port/starboard', doc: 'Port or starboard of the shaft line.', choices: sides },
        ],
      ],
    },
  ],
  allowed: allowedBy(limits),
  read: (entries, reader) => {
    const [length, word, more] = entries[0]?.parts ?? []
    const side = word?.type === 'word' && sides.includes(word.text) ? word.text : undefined
    if (!length || entries.length !== 1 || more || (word && !side)) return notSided(entries, reader)
    const written = { span: length.span, parts: [length], kind: 'length' } as const
    const read = reader.amount(length, 'length')
    if (read === 0) return 0
    // A sign beside the side, or in its place, leaves open which way is meant.
    if (read !== undefined && (read < 0 || !side)) return notSided(entries, reader)
    const value = within(read, limits, written, reader)
    return value === undefined ? undefined : side === 'port' ? -value : value
  },
}
