/** Whether two sets have anything in common. */
export function overlap<T>(a: ReadonlySet<T>, b: ReadonlySet<T>): boolean {
  const [few, many] = a.size < b.size ? [a, b] : [b, a]
  for (const one of few) if (many.has(one)) return true
  return false
}
