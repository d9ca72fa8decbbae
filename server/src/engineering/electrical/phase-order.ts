import type { Rotation } from '../rotation.ts'
import type { PhasePair } from './phases.ts'

/** How three phases follow one another at the motor. Only two sequences exist: a cyclic shift is no other one, and exchanging any two
 * phases gives the other. */

/** `same`: in the order of both lists. `shifted`: the same sequence, one or two places on; the field turns the same way, but stands elsewhere to the
 * rotor. `exchanged`: the other sequence, so the field turns the other way. */
export type PhaseOrder = 'same' | 'shifted' | 'exchanged'

/** The order in which the three phases of `from` reach the terminals of `to`, each list in the order in which its phases follow one another,
 * whatever their marks. Undefined unless both lists have three marks and `pairs` joins them one to one. Source: parity of a permutation of three;
 * IEC 60034-8 as quoted in instructions for industrial low-voltage motors (U V W clockwise, V U W counter-clockwise).
 * @example phaseOrder(['A', 'B', 'C'], ['U', 'V', 'W'], [['A', 'V'], ['B', 'U'], ['C', 'W']]) // 'exchanged' */
export function phaseOrder(
  from: readonly string[],
  to: readonly string[],
  pairs: readonly PhasePair[],
): PhaseOrder | undefined {
  const places = from.map((mark) => to.indexOf(pairs.find(([start]) => start === mark)?.[1] ?? ''))
  const isMap = pairs.length === 3 && from.length === 3 && to.length === 3
  if (!isMap || new Set(from).size < 3 || [0, 1, 2].some((place) => !places.includes(place))) return undefined
  const [first = 0, second = 0] = places
  if ((first + 1) % 3 !== second) return 'exchanged'
  return first === 0 ? 'same' : 'shifted'
}

/** The two pairs whose motor ends to exchange so that the field turns the other way: those that bring the phases into the order of both lists, where
 * they are exchanged, else the first two. Undefined where `phaseOrder` is.
 * @example pairsToExchange(['A', 'B', 'C'], ['U', 'V', 'W'], [['A', 'U'], ['B', 'W'], ['C', 'V']]) // [['B', 'W'], ['C', 'V']] */
export function pairsToExchange(
  from: readonly string[],
  to: readonly string[],
  pairs: readonly PhasePair[],
): readonly [PhasePair, PhasePair] | undefined {
  const order = phaseOrder(from, to, pairs)
  const sorted = from.flatMap((mark) => pairs.filter(([start]) => start === mark))
  const moved = sorted.filter(([start, end]) => from.indexOf(start) !== to.indexOf(end))
  const [first, second] = order === 'exchanged' && moved.length === 2 ? moved : sorted
  return order && first && second ? [first, second] : undefined
}

/** How a motor with these marks turns by IEC 60034-8 with the phases in the order of the list, facing its drive end: U V W clockwise. Undefined unless
 * the three marks are U, V and W, with the same figures around them: `U1`, `1U1-1`. Source: IEC 60034-8 as quoted in instructions for industrial
 * low-voltage motors.
 * @example standardRotation(['V1', 'U1', 'W1']) // 'counter-clockwise' */
export function standardRotation(marks: readonly string[]): Rotation | undefined {
  const read = marks.map((mark) => /^(\d*)([UVW])(\d*(?:-\d+)?)$/i.exec(mark))
  const around = new Set(read.map((one) => one && `${one[1]} ${one[3]}`))
  const letters = read.map((one) => one?.[2]?.toUpperCase() ?? '')
  if (marks.length !== 3 || around.size !== 1 || around.has(null)) return undefined
  const order = phaseOrder(
    ['U', 'V', 'W'],
    ['U', 'V', 'W'],
    letters.map((letter, i) => ['UVW'.charAt(i), letter] as const),
  )
  return order && (order === 'exchanged' ? 'counter-clockwise' : 'clockwise')
}
