import { closestMatch } from '../closest-match.ts'
import { isTooLong, notThis, type Placed, type Shape } from '../shape.ts'

/** Some of a few words, each once, with commas between: `pt1000, ntc`. */
export function words<const W extends readonly string[]>(
  choices: W,
  what: string,
): Shape<readonly Placed<{ readonly word: W[number] }>[]> {
  const wanted = `${what}: of ${choices.join(', ')}, separated by commas`
  return {
    words: wanted,
    choices,
    forms: [{ entries: [[{ label: 'kind', doc: `One of ${choices.join(', ')}.`, choices }]], again: true }],
    read: (entries, reader) => {
      if (isTooLong(entries, reader, what)) return undefined
      const list: Placed<{ readonly word: W[number] }>[] = []
      for (const entry of entries) {
        const [part] = entry.parts
        if (entry.parts.length !== 1 || part?.type !== 'word') return notThis([entry], reader, wanted)
        const { text, span } = part
        if (!choices.includes(text)) return notThis([entry], reader, wanted, closestMatch(text, choices))
        if (!list.some(({ word }) => word === text)) list.push({ word: text, span })
      }
      return list
    },
  }
}
