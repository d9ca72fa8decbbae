import type { Band } from '../../quantity/band.ts'
import { type Kind, kinds } from '../../quantity/kinds.ts'
import { findUnit } from '../../quantity/units.ts'
import type { Part } from '../../syntax/tree.ts'
import { bandForms } from '../form.ts'
import { band, either, type Shape } from '../shape.ts'

/** What is permitted, with the kind of quantity that it is written in. */
export interface Permitted extends Band {
  readonly quantity: Kind
}

type Most = readonly [kind: Kind, most: number]

/** Limits of one of some kinds of quantity, which their unit tells: `max 5 %`, `max 0.05 mm`, `min 1 Mohm`. `most` says what each can be, the first of them
 * where no unit does. */
export function permitted(most: readonly [Most, ...Most[]]): Shape<Permitted> {
  const wanted = either(most.map(([kind]) => kinds[kind].words))
  const [first] = most[0]
  return {
    words: `what is permitted: \`max\` or \`min\` and ${wanted}`,
    quantity: first,
    allowed: { low: 0, high: most[0][1] },
    forms: bandForms(first),
    read: (entries, reader) => {
      const units = entries.flatMap(({ parts }) => parts.flatMap(unitsIn))
      const [quantity, max] = most.find(([kind]) => units.includes(kind)) ?? most[0]
      const read = band(quantity, { min: 0, max }).read(entries, reader)
      return read && { ...read, quantity }
    },
  }
}

function unitsIn(part: Part): readonly (Kind | undefined)[] {
  switch (part.type) {
    case 'amount':
      return [part.unit && findUnit(part.unit.text)?.kind]
    case 'range':
      return [part.low, part.high].flatMap(unitsIn)
    default:
      return []
  }
}
