/** So many results of a kernel are kept: those of a job of a hundred drives, with room for what is edited there. */
const mostKept = 256

/** A kernel whose results are kept by the value of its input, across keystrokes, files and revisions: the one that was asked for longest ago is
 * dropped. For work that takes far longer than its input to write down. Input and result are data; a kernel that throws is asked again. */
export function solve<Input, Result>(
  kernel: (input: Input) => Result,
  most = mostKept,
): (input: Input) => Result {
  const kept = new Map<string, { readonly result: Result }>()
  return (input) => {
    const key = keyOf(input)
    const known = kept.get(key) ?? { result: kernel(input) }
    kept.delete(key)
    kept.set(key, known)
    const [oldest] = kept.keys()
    if (kept.size > most && oldest !== undefined) kept.delete(oldest)
    return known.result
  }
}

/** The same for inputs that are equal, and for no others. JSON has neither infinite numbers, nor -0, nor undefined in a list. */
const keyOf = (input: unknown): string =>
  JSON.stringify(input, (_, value: unknown) =>
    value === undefined || (typeof value === 'number' && (!Number.isFinite(value) || Object.is(value, -0)))
      ? { number: Object.is(value, -0) ? '-0' : String(value) }
      : value,
  )
