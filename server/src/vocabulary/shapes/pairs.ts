import { isTooLong, notThis, type Placed, type Shape } from '../shape.ts'

export interface Pair {
  readonly from: string
  readonly to: string
}

const wanted = 'terminals in pairs: `A to U, B to V, C to W`'

/** Which terminal goes to which: `A to U, B to V, C to W`. */
export const pairs: Shape<readonly Placed<Pair>[]> = {
  words: wanted,
  mayQuote: true,
  forms: [
    {
      entries: [
        [
          { label: 'terminal', doc: 'A phase terminal of the controller.', terminalsOf: 'controller' },
          { label: 'to', doc: 'The word `to`.', choices: ['to'] },
          { label: 'terminal', doc: 'The motor terminal it goes to.', terminalsOf: 'motor' },
        ],
      ],
      again: true,
    },
  ],
  read: (entries, reader) => {
    if (isTooLong(entries, reader, 'pairs')) return undefined
    const list: Placed<Pair>[] = []
    for (const entry of entries) {
      const [from, word, to] = entry.parts
      if (
        entry.parts.length !== 3 ||
        (from?.type !== 'word' && from?.type !== 'text') ||
        word?.type !== 'word' ||
        word.text !== 'to' ||
        (to?.type !== 'word' && to?.type !== 'text')
      )
        return notThis([entry], reader, wanted)
      list.push({ from: from.text, to: to.text, span: entry.span })
    }
    return list
  },
}
