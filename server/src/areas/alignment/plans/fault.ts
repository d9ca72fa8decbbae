import type { AngleProblem, Arc } from '../../../engineering/alignment/angles.ts'
import type { SlopeProblem } from '../../../engineering/alignment/face.ts'
import type { FeetProblem } from '../../../engineering/alignment/feet.ts'
import type { Block } from '../../../job/model.ts'
import { formatSi } from '../../../quantity/format.ts'
import { formatSlope } from '../../../quantity/format-measures.ts'
import { OutOfRange } from '../../../quantity/out-of-range.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { Fault, Outcome } from '../../common/outcome.ts'

/** What stands in the way of a correction, with words for a person. */
export interface AlignmentFault
  extends Fault<
    | 'no-coupling'
    | 'no-gaps'
    | 'read-twice'
    | 'no-diameter'
    | 'no-feet'
    | 'too-many-feet'
    | 'no-steps'
    | 'impossible'
    | 'unreadable'
    | AngleProblem['type']
    | SlopeProblem['type']
    | FeetProblem['type']
  > {
  /** The fact that is to blame, where it is one. */
  readonly at?: FactAt
}

/** A fact of a block. */
interface FactAt {
  readonly block: BlockId
  readonly fact: string
}

/** Where a block says something; undefined where it is silent. */
export const factAt = (block: Block | undefined, fact: string): FactAt | undefined =>
  block?.facts.has(fact) ? { block: idOf(block), fact } : undefined

export type AlignmentOutcome<T> = Outcome<T, AlignmentFault>

export const fault = (type: AlignmentFault['type'], words: string): AlignmentFault => ({ type, words })

/** A fact whose value nothing can be worked out from. Its message is for a person. */
export class WrongFact extends OutOfRange {
  readonly at: FactAt | undefined
  constructor(words: string, at: FactAt | undefined) {
    super(words)
    this.at = at
  }
}

/** Does the work; a number that is refused there is put down to the fact it came from, in words for a person. */
export function blaming<T>(at: FactAt | undefined, words: string, work: () => T): T {
  try {
    return work()
  } catch (error) {
    throw error instanceof OutOfRange && !(error instanceof WrongFact) ? new WrongFact(words, at) : error
  }
}

const named: Readonly<Record<number, string>> = { 0: 'top', 90: 'starboard', 180: 'bottom', 270: 'port' }

/** An angle round the shaft as it is said: `starboard`, `30 deg`. */
export function formatAngle(angle: number): string {
  const degrees = Math.round((angle * 180) / Math.PI) % 360
  return named[degrees] ?? formatSi(angle, 'angle')
}

const formatArc = ({ from, to }: Arc): string => `from ${formatAngle(from)} round to ${formatAngle(to)}`

export function asFault(problem: AngleProblem | SlopeProblem | FeetProblem, what = 'gaps'): AlignmentFault {
  switch (problem.type) {
    case 'too-few-angles':
      return fault(
        problem.type,
        `The ${what} are read at ${problem.places} ${problem.places === 1 ? 'place' : 'places'} round the flange; three are needed. Four are better.`,
      )
    case 'within-half-turn':
      return fault(
        problem.type,
        `Nothing was read ${formatArc(problem.missing)}. The ${what} lie within half a turn, so the tilt of the flange is not known.`,
      )
    case 'slope-too-large':
      return fault(
        problem.type,
        `The gaps give a slope of ${formatSlope(problem.slope)}, more than any coupling can have. One of the gaps or the gauge-diameter is wrong.`,
      )
    case 'feet-at-one-station':
      return fault(
        problem.type,
        `All feet are at the same distance from the coupling, so they cannot set the slope. Check from-coupling of ${problem.feet.join(', ')}.`,
      )
    case 'feet-in-line':
      return fault(
        problem.type,
        `All feet are in one slanting line, so slope and roll cannot be told apart. Check from-coupling and across of ${problem.feet.join(', ')}.`,
      )
  }
}
