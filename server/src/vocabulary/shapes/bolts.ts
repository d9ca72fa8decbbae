import { type Limits, within } from '../limits.ts'
import { notThis, type Shape } from '../shape.ts'

export interface Bolts {
  readonly count: number
  readonly thread: string
  /** Property class or grade as marked: `8.8`, `A4-70`. */
  readonly class?: string
  /** Tightening torque, N·m. */
  readonly torque?: number
}

const wanted = 'bolts: `4 x M10 class 8.8, 45 N·m`'

const torques: Limits = { min: 0.1, max: 1e5 }
const counts: Limits = { min: 1, max: 100 }

/** `4 x M10 class 8.8, 45 N·m`: how many, thread, class, tightening torque. */
export const bolts: Shape<Bolts> = {
  words: wanted,
  mayQuote: true,
  forms: [
    {
      entries: [
        [
          { label: 'number x', doc: 'How many there are: `4 x`.', behind: ['x'] },
          { label: 'thread', doc: 'Their thread: `M10`, or in quotes `"3/8-16 UNC"`.' },
          {
            label: 'class',
            doc: 'The word `class`, if the class is known.',
            choices: ['class'],
            optional: true,
          },
          { label: 'mark', doc: 'Property class or grade as marked: `8.8`, `A4-70`.' },
        ],
        [
          {
            label: 'torque',
            doc: 'Tightening torque, if known: `45 N·m`.',
            quantity: 'torque',
          },
        ],
      ],
    },
  ],
  read: (entries, reader) => {
    const [number, thread, word, grade, more] = entries[0]?.parts ?? []
    const size = thread?.type === 'word' || thread?.type === 'text' ? thread.text : undefined
    if (
      number?.type !== 'amount' ||
      number.unit?.text !== 'x' ||
      size === undefined ||
      more ||
      entries.length > 2
    )
      return notThis(entries, reader, wanted)
    const count = reader.amount({ ...number, unit: undefined }, 'ratio')
    if (count === undefined) return undefined
    if (!Number.isInteger(count)) return notThis(entries, reader, wanted)
    const many = within(count, counts, { span: number.span, parts: [], kind: 'ratio' }, reader)
    if (many === undefined) return undefined
    const marked =
      grade?.type === 'amount' && !grade.unit
        ? grade.number
        : grade?.type === 'word' || grade?.type === 'text'
          ? grade.text
          : undefined
    if (word && (word.type !== 'word' || word.text !== 'class' || marked === undefined))
      return notThis(entries, reader, wanted)
    const tightening = entries[1]?.parts
    if (tightening && tightening.length !== 1) return notThis(entries, reader, wanted)
    const by = tightening?.[0]
    const torque =
      by &&
      within(reader.amount(by, 'torque'), torques, { span: by.span, parts: [by], kind: 'torque' }, reader)
    if (tightening && torque === undefined) return undefined
    return {
      count,
      thread: size,
      ...(marked !== undefined && { class: marked }),
      ...(torque !== undefined && { torque }),
    }
  },
}
