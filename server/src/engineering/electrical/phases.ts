/** Which terminal goes to which. */

/** One conductor: a terminal of the supply side, and the terminal it lands on. */
export type PhasePair = readonly [from: string, to: string]

export interface MapFault {
  readonly fault:
    | 'missing-from'
    | 'missing-to'
    | 'doubled-from'
    | 'doubled-to'
    | 'unknown-from'
    | 'unknown-to'
  readonly terminal: string
  /** Which pair is at fault, from 0; absent where a terminal is in no pair at all. */
  readonly index?: number
}

/** What keeps `pairs` from joining every terminal of `from` to one of `to`, one to one: terminals that no
 * list knows, used again (from the second use on), or left out. Pairs in order first, then what is missing.
 * Empty when the map is good.
 * @example mapFaults(['A', 'B'], ['U', 'V'], [['A', 'U'], ['B', 'U']])[0]?.fault // 'doubled-to' */
export function mapFaults(
  from: readonly string[],
  to: readonly string[],
  pairs: readonly PhasePair[],
): readonly MapFault[] {
  const usedFrom = pairs.map(([terminal]) => terminal)
  const usedTo = pairs.map(([, terminal]) => terminal)
  const atPairs = pairs.flatMap(([start, end], index): MapFault[] => [
    ...(from.includes(start) ? [] : [{ fault: 'unknown-from', terminal: start, index } as const]),
    ...(to.includes(end) ? [] : [{ fault: 'unknown-to', terminal: end, index } as const]),
    ...(usedFrom.indexOf(start) < index ? [{ fault: 'doubled-from', terminal: start, index } as const] : []),
    ...(usedTo.indexOf(end) < index ? [{ fault: 'doubled-to', terminal: end, index } as const] : []),
  ])
  const missing = (
    fault: 'missing-from' | 'missing-to',
    terminals: readonly string[],
    used: readonly string[],
  ) =>
    terminals
      .filter((terminal) => !used.includes(terminal))
      .map((terminal): MapFault => ({ fault, terminal }))
  return [...atPairs, ...missing('missing-from', from, usedFrom), ...missing('missing-to', to, usedTo)]
}
