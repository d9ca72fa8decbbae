import type { AxisError, InPlanes } from './planes.ts'

/** How the places or the signs of a reading may be written otherwise than they are. Places are counted top, starboard, bottom, port: clockwise, as
 * seen looking forward. */
export type Mirror =
  | {
      readonly type:
        | 'top-and-bottom-swapped'
        | 'sides-swapped'
        /** Each place is written across from where it was read. */
        | 'half-turn'
        | 'offset-signs-reversed'
        | 'gap-signs-reversed'
    }
  /** Each place is written a quarter further on, clockwise or counter-clockwise. */
  | { readonly type: 'quarter-turn'; readonly way: 'clockwise' | 'counter-clockwise' }

/** Which readings have it: the one after the move, the one before it, or both. */
export type Swapped = 'later' | 'first' | 'both'

interface Part {
  readonly kind: keyof AxisError
  readonly plane: keyof InPlanes<unknown>
}

/** What is written as a part: `sign` times what is true of that kind in `plane`. */
function written(
  mirror: Mirror,
  { kind, plane }: Part,
): { readonly sign: number; readonly plane: Part['plane'] } {
  const turned = (is: boolean) => ({ sign: is ? -1 : 1, plane })
  switch (mirror.type) {
    case 'top-and-bottom-swapped':
      return turned(plane === 'vertical')
    case 'sides-swapped':
      return turned(plane === 'horizontal')
    case 'half-turn':
      return turned(true)
    case 'offset-signs-reversed':
      return turned(kind === 'offset')
    case 'gap-signs-reversed':
      return turned(kind === 'slope')
    case 'quarter-turn':
      // Clockwise: what is written at starboard is of the top, what is written at the top is of port.
      return {
        sign: (plane === 'vertical') === (mirror.way === 'clockwise') ? -1 : 1,
        plane: plane === 'vertical' ? 'horizontal' : 'vertical',
      }
  }
}

/** What undoes it: a quarter the other way, else the same once more. */
const undone = (mirror: Mirror): Mirror =>
  mirror.type === 'quarter-turn'
    ? { ...mirror, way: mirror.way === 'clockwise' ? 'counter-clockwise' : 'clockwise' }
    : mirror

/** What the later reading shows of a part, m or rad, where the first, the later or both readings are written so: M (r1 + c), M⁻¹ r1 + c, or
 * r1 + M c. `at` gives what was read first, and what the moves changed, of the same kind in each plane. Signs as everywhere: + up, + to starboard.
 * Source: geometry of the places. [derived]
 * @example writtenSo({ type: 'quarter-turn', way: 'clockwise' }, 'later', { kind: 'offset', plane: 'horizontal' }, (plane) => ({
 * before: plane === 'vertical' ? 3e-4 : 0, change: 0 })) // 3e-4 */
export function writtenSo(
  mirror: Mirror,
  swapped: Swapped,
  part: Part,
  at: (plane: Part['plane']) => { readonly before: number; readonly change: number },
): number {
  const own = at(part.plane)
  const so = written(swapped === 'first' ? undone(mirror) : mirror, part)
  const from = at(so.plane)
  switch (swapped) {
    case 'later':
      return so.sign * (from.before + from.change)
    case 'first':
      return so.sign * from.before + own.change
    case 'both':
      return own.before + so.sign * from.change
  }
}
