import { boltSize } from '../../quantity/bolt-size.ts'
import type { Entry } from '../../syntax/tree.ts'
import type { Reader } from '../reader.ts'
import { notThis, type Placed, type Shape } from '../shape.ts'

/** The thread of a stud, or that a lug is made for. */
export interface Stud {
  /** As written: `M10`, `3/8 in`. */
  readonly mark: string
  /** Nominal diameter, m. Absent where no thread has that designation: a check says so. */
  readonly diameter?: number
}

const wanted = 'a thread: `M10`, `3/8 in`, `"3/8-16 UNC"`'

function readStud(entry: Entry, reader: Reader): Placed<Stud> | undefined {
  const [part, more] = entry.parts
  if (!part || more) return notThis([entry], reader, wanted)
  if (part.type === 'amount' && part.unit) {
    const diameter = reader.amount(part, 'length')
    if (diameter === undefined) return undefined
    const isSize = diameter >= 0.002 && diameter <= 0.06
    return isSize
      ? { mark: `${part.number} ${part.unit.text}`, diameter, span: entry.span }
      : notThis([entry], reader, wanted)
  }
  const text = part.type === 'word' || part.type === 'text' ? part.text : ''
  if (text === '') return notThis([entry], reader, wanted)
  const diameter = boltSize(text)
  return { mark: text, ...(diameter !== undefined && { diameter }), span: entry.span }
}

const slot = {
  label: 'thread',
  doc: 'The thread: `M10`, `3/8 in`, or in quotes `"3/8-16 UNC"`.',
} as const

/** One thread: `M10`. */
export const stud: Shape<Stud> = {
  words: wanted,
  mayQuote: true,
  forms: [{ entries: [[slot]] }],
  read: (entries, reader) => {
    const [entry, more] = entries
    if (!entry || more) return notThis(entries, reader, wanted)
    const read = readStud(entry, reader)
    if (!read) return undefined
    const { span: _, ...thread } = read
    return thread
  },
}

const both = 'one thread for both ends, or two: at `from`, at `to`: `M10, M8`'

/** Lugs of a cable: at both ends, or at `from` and at `to`: `M10, M8`. */
export const lugs: Shape<readonly Placed<Stud>[]> = {
  words: both,
  mayQuote: true,
  forms: [{ entries: [[slot]] }, { entries: [[slot], [slot]] }],
  read: (entries, reader) => {
    if (entries.length > 2) return notThis(entries, reader, both)
    const list = entries.flatMap((entry) => readStud(entry, reader) ?? [])
    return list.length === entries.length ? list : undefined
  },
}
