import { sources } from '../../syntax/tokens.ts'

const goesOn = new RegExp(`[${sources.letter}0-9\\-·/^]`)
const isLetter = new RegExp(`[${sources.letter}]`)

/** How often a text could have a word as one of its names or a segment of a path: told by its neighbours alone, so that it is never too few.
 * A word that begins behind a letter, or goes on, is part of a longer one. */
export function mentionsOf(text: string, word: string): number {
  let count = 0
  if (word === '') return count
  for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + 1)) {
    const before = text[at - 1] ?? ' '
    const behind = text[at + word.length] ?? ' '
    if (!isLetter.test(before) && !goesOn.test(behind)) count += 1
  }
  return count
}

/** Whether a text could mention one of these. Behind a backslash a quoted text may write anything another way. */
export const mayMention = (text: string, words: readonly string[]): boolean =>
  words.some((word) => mentionsOf(text, word) > 0) || text.includes('\\')
