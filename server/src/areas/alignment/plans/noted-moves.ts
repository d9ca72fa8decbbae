import type { Foot } from '../../../engineering/alignment/feet.ts'
import type { NotedMove } from '../../../engineering/alignment/hypothesis.ts'
import { inBothPlanes } from '../../../engineering/alignment/planes.ts'
import { heightOf } from '../../../engineering/thread.ts'
import type { Block } from '../../../job/model.ts'
import { exactly, plus, type Uncertain } from '../../../quantity/uncertainty.ts'
import type { FootMove } from '../../../vocabulary/shapes/foot-move.ts'
import { type Adjuster, stepOf } from './steps.ts'

/** How far a move may miss what is noted, standard uncertainty: a tenth of the smallest step of the nuts and a hundredth of the way they go, and
 * 0.01 mm where a gauge or a dial measured it. Common practice, no source. */
const missed = { ofNutStep: 0.1, ofTravel: 0.01, length: 1e-5 } as const

const still: NotedMove & { readonly byNut: number } = { ...inBothPlanes(() => exactly(0)), byNut: 0 }

/** What these moves together, after others, did to each foot in the order of the feet; a foot that is not named stayed. Undefined where that is not
 * known. */
export function notedMoves(
  moves: readonly Block[],
  { feet, adjuster }: { readonly feet: readonly Foot[]; readonly adjuster: Adjuster },
  before?: readonly NotedMove[],
): readonly NotedMove[] | undefined {
  const total = new Map(feet.map(({ name }, i) => [name, { ...still, ...before?.[i] }]))
  for (const [name, { value }] of moves.flatMap(({ others }) => [...others])) {
    const { turn = 0, rise = 0, starboard = 0 } = value as FootMove
    const sofar = total.get(name)
    if (!sofar || (turn !== 0 && adjuster.by !== 'nut')) return undefined
    const byNut = turn !== 0 && adjuster.by === 'nut' ? turned(turn, adjuster) : exactly(0)
    total.set(name, {
      vertical: plus(plus(sofar.vertical, byNut), measured(rise)),
      horizontal: plus(sofar.horizontal, measured(starboard)),
      byNut: sofar.byNut + byNut.value,
    })
  }
  return feet.map(({ name }) => total.get(name) ?? still)
}

function turned(turn: number, nuts: Extract<Adjuster, { by: 'nut' }>): Uncertain {
  const value = heightOf(turn, nuts.thread)
  return { value, standard: Math.hypot(missed.ofNutStep * stepOf(nuts), missed.ofTravel * value) }
}

const measured = (length: number): Uncertain => ({
  value: length,
  standard: length === 0 ? 0 : missed.length,
})
