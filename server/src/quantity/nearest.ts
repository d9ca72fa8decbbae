import { distance } from 'fastest-levenshtein'

/** The word a person most likely meant, or undefined when none is close. Case and hyphens count for little. */
export function nearest(word: string, among: Iterable<string>): string | undefined {
  const plain = (text: string) => text.toLowerCase().replaceAll('_', '-')
  let best: string | undefined
  let least = Math.max(1, Math.ceil(word.length / 3)) + 0.5
  for (const candidate of among) {
    const lengths = 0.05 * Math.abs(word.length - candidate.length)
    const away = distance(plain(word), plain(candidate)) + (word === candidate ? 0 : 0.1 + lengths)
    if (away < least) {
      least = away
      best = candidate
    }
  }
  return best
}
