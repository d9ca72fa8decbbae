/** Works a thing out once for each object, and keeps it as long as the object itself: for what follows from something that never changes. */
export function memoizeByIdentity<K extends WeakKey, V>(make: (of: K) => V): (of: K) => V {
  const kept = new WeakMap<K, { readonly made: V }>()
  return (of) => {
    const known = kept.get(of)
    if (known) return known.made
    const made = make(of)
    kept.set(of, { made })
    return made
  }
}
