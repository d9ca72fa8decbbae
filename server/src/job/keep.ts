/** What is kept for the key, or else is made and kept. */
export function keep<K, V>(kept: Map<K, V>, key: K, make: () => V): V {
  const known = kept.get(key)
  if (known !== undefined || kept.has(key)) return known as V
  const made = make()
  kept.set(key, made)
  return made
}
