import type { Entry, Part, Span } from '../../syntax/tree.ts'
import { closestMatch } from '../closest-match.ts'
import { type Limits, within } from '../limits.ts'
import type { Reader } from '../reader.ts'
import { isTooLong, notThis, type Placed, type Shape } from '../shape.ts'

/** Words for places round the shaft: radians clockwise from top, looking forward. */
const places = {
  top: 0,
  starboard: Math.PI / 2,
  bottom: Math.PI,
  port: (3 * Math.PI) / 2,
} as const satisfies Record<string, number>

/** A length read at a place round the shaft. */
export interface Angled {
  /** Radians clockwise from top, looking forward. */
  readonly angle: number
  /** Metres. */
  readonly value: number
}

const wanted =
  'lengths with their places: `top 1.92 mm, starboard 1.80 mm, …`, or degrees clockwise from top looking forward: `0 deg 1.92 mm, …`'

const placeWords = `one of ${Object.keys(places).join(', ')}`

/** Once round, either way. */
const round: Limits = { min: -2 * Math.PI, max: 2 * Math.PI }

function placeOf(part: Part, reader: Reader): number | undefined {
  if (part.type === 'word')
    return Object.hasOwn(places, part.text) ? places[part.text as keyof typeof places] : undefined
  return part.type === 'amount' && part.unit ? reader.amount(part, 'angle') : undefined
}

/** Lengths at places round the shaft: `top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm`. A place may be read again. */
export const angled = (limits: Required<Pick<Limits, 'min' | 'max'>>): Shape<readonly Placed<Angled>[]> => ({
  words: wanted,
  quantity: 'length',
  choices: Object.keys(places),
  forms: [
    {
      entries: [
        [
          {
            label: 'place',
            doc: 'Top, starboard, bottom or port, or degrees clockwise from top looking forward: `45 deg`.',
            choices: Object.keys(places),
            quantity: 'angle',
          },
          { label: 'length', doc: 'What was read there, with its unit.', quantity: 'length' },
        ],
      ],
      again: true,
    },
  ],
  allowed: { low: limits.min, high: limits.max },
  read: (entries: readonly Entry[], reader) => {
    if (isTooLong(entries, reader, 'places')) return undefined
    const list: Placed<Angled>[] = []
    for (const entry of entries) {
      const [place, length] = entry.parts
      const angle = place && entry.parts.length === 2 ? placeOf(place, reader) : undefined
      if (place?.type === 'word' && entry.parts.length === 2 && angle === undefined) {
        const near = closestMatch(place.text, Object.keys(places))
        return notThis([{ parts: [place], span: place.span }], reader, placeWords, near)
      }
      if (angle === undefined || !length) return notThis([entry], reader, wanted)
      const turned =
        place && within(angle, round, { span: place.span, parts: [place], kind: 'angle' }, reader)
      const read = turned === undefined ? undefined : reader.amount(length, 'length')
      const value = within(read, limits, { span: length.span, parts: [length], kind: 'length' }, reader)
      if (value === undefined) return undefined
      list.push({ angle, value, span: entry.span satisfies Span })
    }
    return list
  },
})
