import { nearest } from '../quantity/nearest.ts'

/** Whether a word is short for another: its first letter, and the rest in their order. `stbd` for starboard. */
function isShortFor(word: string, whole: string): boolean {
  let rest = whole
  for (const letter of word.toLowerCase()) {
    const at = rest.indexOf(letter)
    if (at < 0 || (rest === whole && at > 0)) return false
    rest = rest.slice(at + 1)
  }
  return true
}

/** The one of a few words that was meant: the one it is short for, or the nearest. */
export function closestMatch(word: string, among: readonly string[]): string | undefined {
  const longer = among.filter((whole) => isShortFor(word, whole))
  return longer.length === 1 ? longer[0] : nearest(word, among)
}
