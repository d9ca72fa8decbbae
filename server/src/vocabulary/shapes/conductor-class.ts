import { count, notThis, type Shape } from '../shape.ts'

/** Classes of stranded conductors in IEC 60228. Solid ones (1) are not for boats. */
const classes = [2, 5, 6] as const

const wanted = 'a class of stranded conductors, IEC 60228: 2, 5 or 6'
const whole = count({ min: 1, max: 6 })

/** `5`. */
export const conductorClass: Shape<(typeof classes)[number]> = {
  ...whole,
  words: wanted,
  forms: [{ entries: [[{ label: 'class', doc: 'Class of IEC 60228: 2, 5 or 6.' }]] }],
  read: (entries, reader) => {
    const read = whole.read(entries, reader)
    if (read === undefined) return undefined
    return classes.find((one) => one === read) ?? notThis(entries, reader, wanted)
  },
}
