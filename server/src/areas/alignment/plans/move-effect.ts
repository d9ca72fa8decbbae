import { type NutMove, nutMove } from '../../../engineering/adjusters.ts'
import { heightOf, parseThread, type Thread } from '../../../engineering/thread.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { OutOfRange } from '../../../quantity/out-of-range.ts'
import { exactly } from '../../../quantity/uncertainty.ts'
import type { Lookup } from '../../../store/lookup.ts'
import type { FootMove } from '../../../vocabulary/shapes/foot-move.ts'
import { correctionOf } from './correction.ts'
import { feetOf, machineOn } from './feet.ts'
import { gaugeCircle } from './gauge-circle.ts'
import { movesAfter, plannedAfter, readingBefore } from './moves.ts'

export interface SetThread {
  readonly thread: Thread
  /** As the bed has it: `M16`. */
  readonly name: string
}

/** The thread that sets the feet near a block; undefined where shims do, or where it is not known. */
export function threadNear(lookup: Lookup): SetThread | undefined {
  const bed = lookup.near('bed')
  const name = bed && factOf(bed, 'bed.thread')?.value
  if (!bed || name === undefined || factOf(bed, 'bed.adjuster')?.value === 'shims') return undefined
  const parsed = parseThread(name)
  return parsed.ok ? { thread: parsed.value, name } : undefined
}

interface MovedFoot {
  readonly name: string
  /** m, + up; undefined where it is said in turns of a thread that is not known. */
  readonly height: number | undefined
  /** m, + to starboard. */
  readonly starboard: number
  /** The nearest turns of the nut, where the thread is known. */
  readonly nut?: NutMove
}

/** What a move did. Slopes in rad: + far end up, + to starboard. */
export interface MoveEffect {
  readonly feet: readonly MovedFoot[]
  readonly slope?: {
    readonly change: { readonly vertical: number; readonly horizontal: number }
    /** As the reading before it found it; absent where another move came between. */
    readonly before?: { readonly vertical: number; readonly horizontal: number }
    /** Gap variation that is then to be expected, m. */
    readonly gapVariation?: number
  }
}

/** Every foot of the bed that is not named stays where it is. Never throws on figures. */
export function effectOf(move: Block, lookup: Lookup): MoveEffect {
  const set = threadNear(lookup)
  const feet = [...move.others].map(([name, { value }]): MovedFoot => {
    const { turn, rise = 0, starboard = 0 } = value as FootMove
    const byNut = turn === undefined ? 0 : set && heightOf(turn, set.thread)
    const height = byNut === undefined ? undefined : byNut + rise
    const nut = set && height !== undefined && Math.abs(height) <= 1 && nutMove(height, set.thread, 2)
    return { name, height, starboard, ...(nut && { nut }) }
  })
  const slope = slopeAfter(move, feet, lookup)
  return { feet, ...(slope && { slope }) }
}

function slopeAfter(move: Block, feet: readonly MovedFoot[], lookup: Lookup): MoveEffect['slope'] {
  try {
    const bed = feetOf(lookup.near('bed'))
    // A foot that cannot be read may have been moved.
    const isUnread = [...move.unread].some((fact) => fact !== 'by' && fact !== 'done')
    if (!bed.ok || isUnread || feet.some(({ height }) => height === undefined)) return undefined
    const machine = machineOn(bed.value)
    if (!machine.ok) return undefined
    const moved = machine.value(
      bed.value.feet.map((foot) => {
        const by = feet.find(({ name }) => name === foot.name)
        return { vertical: exactly(by?.height ?? 0), horizontal: exactly(by?.starboard ?? 0) }
      }),
    )
    const change = { vertical: moved.vertical.slope.value, horizontal: moved.horizontal.slope.value }
    const reading = readingBefore(move)
    const found = reading && correctionOf(reading, lookup.from(reading))
    const isFirst = reading && [...movesAfter(reading), ...plannedAfter(reading)][0] === move
    if (!found?.ok || !isFirst) return { change }
    const before = {
      vertical: found.value.slope.vertical.value,
      horizontal: found.value.slope.horizontal.value,
    }
    const circle = gaugeCircle(lookup.near('coupling'))
    const after = Math.hypot(before.vertical + change.vertical, before.horizontal + change.horizontal)
    // The gap variation of a reading is counted from its target.
    const isStraight = found.value.target === undefined
    return { change, before, ...(circle && isStraight && { gapVariation: circle.diameter * after }) }
  } catch (error) {
    if (error instanceof OutOfRange) return undefined
    throw error
  }
}
