/** Whether two values say the same. Lists, maps, sets and plain objects are compared by what is in them; anything else, such as a block or a
 * section, by identity. */
export function equal(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  const prototype = Object.getPrototypeOf(a)
  if (prototype !== Object.getPrototypeOf(b)) return false
  switch (prototype) {
    case Array.prototype:
      return equalLists(a as readonly unknown[], b as readonly unknown[])
    case Object.prototype:
      return equalObjects(a as Fields, b as Fields)
    case Map.prototype:
      return equalMaps(a as ReadonlyMap<unknown, unknown>, b as ReadonlyMap<unknown, unknown>)
    case Set.prototype:
      return equalSets(a as ReadonlySet<unknown>, b as ReadonlySet<unknown>)
    default:
      return false
  }
}

type Fields = Readonly<Record<string, unknown>>

/** Long lists and maps that many results share are compared once. */
const found = new WeakMap<object, object>()
const long = 16

function equalLists(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false
  if (a.length >= long && found.get(a) === b) return true
  const isEqual = a.every((item, i) => equal(item, b[i]))
  if (isEqual && a.length >= long) found.set(a, b)
  return isEqual
}

function equalObjects(a: Fields, b: Fields): boolean {
  const names = Object.keys(a)
  // A text with its tree is one thing.
  if ('parsed' in a) return false
  return (
    names.length === Object.keys(b).length &&
    names.every((name) => Object.hasOwn(b, name) && equal(a[name], b[name]))
  )
}

/** The order counts: what is listed from a map is listed in its order. */
function equalMaps(a: ReadonlyMap<unknown, unknown>, b: ReadonlyMap<unknown, unknown>): boolean {
  if (a.size !== b.size) return false
  if (a.size >= long && found.get(a) === b) return true
  const isEqual = equalLists([...a].flat(1), [...b].flat(1))
  if (isEqual && a.size >= long) found.set(a, b)
  return isEqual
}

const equalSets = (a: ReadonlySet<unknown>, b: ReadonlySet<unknown>): boolean =>
  a.size === b.size && equalLists([...a], [...b])
