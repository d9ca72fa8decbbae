import type { Band } from '../../quantity/band.ts'
import { type Kind, kinds } from '../../quantity/kinds.ts'
import type { Limits } from '../limits.ts'
import { band, notThis, type Shape } from '../shape.ts'

/** Limits that must have a lower end: `min 20 nmi`. A `max` alone would ask for nothing. */
export function lowerLimit(kind: Kind, limits: Limits): Shape<Band> {
  const words = `the least that will do: \`min\` and ${kinds[kind].words}`
  const whole = band(kind, limits)
  return {
    ...whole,
    words,
    forms: [
      {
        entries: [
          [
            { label: 'min', doc: 'The word `min`.', choices: ['min'] },
            { label: 'least', doc: 'The least that will do, with its unit.', quantity: kind },
          ],
        ],
      },
    ],
    read: (entries, reader) => {
      const read = whole.read(entries, reader)
      return read && (read.low === undefined ? notThis(entries, reader, words) : { low: read.low })
    },
  }
}
