/** Which terminal goes to which, and the way the machine then turns. */

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

/** Seen facing the drive end. On an inboard drive that is looking forward from astern. */
export type RotationSense = 'clockwise' | 'counter-clockwise'

/** How the machine turns when `pairs` joins `from` (in supply order, L1-L2-L3) to `to` (in machine order,
 * U-V-W): an even permutation clockwise, an odd one, two leads swapped, counter-clockwise. Holds for a
 * machine on a plain supply; with a rotor-position sensor a swapped pair is a fault and not a reversal.
 * RangeError unless three terminals are joined one to one. Source: IEC 60034-8.
 * @example permutationSense(['L1', 'L2', 'L3'], ['U', 'V', 'W'], [['L1', 'V'], ['L2', 'U'], ['L3', 'W']]) // 'counter-clockwise' */
export function permutationSense(
  from: readonly string[],
  to: readonly string[],
  pairs: readonly PhasePair[],
): RotationSense {
  if (new Set(from).size !== 3 || from.length !== 3 || new Set(to).size !== 3 || to.length !== 3) {
    throw new RangeError('rotation needs three different terminals on each side')
  }
  if (mapFaults(from, to, pairs).length > 0)
    throw new RangeError('rotation needs a map that joins all terminals one to one')
  const place = from.map((start) => to.indexOf(pairs.find(([terminal]) => terminal === start)?.[1] ?? ''))
  const inversions = place.flatMap((a, i) => place.slice(i + 1).filter((b) => b < a)).length
  return inversions % 2 === 0 ? 'clockwise' : 'counter-clockwise'
}
