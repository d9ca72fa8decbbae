interface Kept<K, V> {
  get(key: K): V | undefined
  has(key: K): boolean
  set(key: K, value: V): unknown
}

/** What is kept for the key, or else is made and kept. */
export function getOrInsert<K, V>(kept: Kept<K, V>, key: K, make: () => V): V {
  const known = kept.get(key)
  if (known !== undefined || kept.has(key)) return known as V
  const made = make()
  kept.set(key, made)
  return made
}
