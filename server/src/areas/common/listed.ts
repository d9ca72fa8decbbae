/** `aft, fwd-port and fwd-stbd`. */
export const listed = (names: readonly string[], last: 'and' | 'or' = 'and'): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} ${last} ${names.at(-1)}`
