/** Prints as `console.log` does. Lines that begin with [suite] reach the terminal. */
export const print = (format = '', ...values: unknown[]): void => {
  const rest = [...values]
  const text = String(format).replaceAll(/%[%ds]/g, (mark) => (mark === '%%' ? '%' : String(rest.shift())))
  for (const line of [text, ...rest].join(' ').split('\n')) console.log(`[suite] ${line}`)
}
