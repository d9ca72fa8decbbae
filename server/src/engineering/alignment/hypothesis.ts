import type { Uncertain } from '../../quantity/uncertainty.ts'
import type { Foot } from './feet.ts'
import type { Mirror, Swapped } from './mirrors.ts'
import type { AxisError, InPlanes } from './planes.ts'

/** What may have happened instead of what was noted. `feet` are names. */
export type Hypothesis =
  /** `did-not-follow`: one foot that hangs. `not-as-noted`: one foot that is known not to hang. `forgotten`: the feet of a station, or all heights. */
  | {
      readonly type: 'turned-the-wrong-way' | 'did-not-follow' | 'not-as-noted' | 'forgotten'
      readonly feet: readonly string[]
    }
  /** The machine came part of the way (share of it, 0 to 1), all feet alike: it was read before it was clamped. */
  | { readonly type: 'part-of-the-way'; readonly share: number }
  /** The circle the gauge goes in on, or the pitch of the thread, is `factor` times what is stated. */
  | { readonly type: 'other-gauge-diameter' | 'other-pitch'; readonly factor: number }
  | (Mirror & { readonly swapped: Swapped })
  /** An exact copy of the figures of an earlier reading. */
  | { readonly type: 'copied'; readonly from: string }
  /** The moves of the aft end were made at the forward end and the other way round: all, or the heights only. */
  | { readonly type: 'made-at-the-wrong-end'; readonly made: 'all' | 'heights' }
  | {
      readonly type:
        | 'nothing-moved'
        | 'sideways-not-done'
        | 'wrong-side'
        | 'made-twice'
        | 'move-not-noted'
        | 'other-hand'
        | 'offset-not-carried'
    }

/** What a foot was noted to be moved by, m. */
export type NotedMove = InPlanes<Uncertain> & {
  /** The part of the vertical move that was noted in turns of a nut, m. */
  readonly byNut?: number
}

/** One thing that was read both times, m or rad. */
export interface Component {
  readonly kind: keyof AxisError
  readonly plane: keyof InPlanes<unknown>
  readonly before: number
  readonly found: number
  /** Of the difference between both readings, as the gauge has it. */
  readonly variance: number
  /** What a metre of each foot changes, in the order of the feet. */
  readonly effects: readonly number[]
}

/** Two readings and the moves noted between them. */
export interface MoveLog {
  readonly feet: readonly Foot[]
  readonly moves: readonly NotedMove[]
  readonly components: readonly Component[]
  /** Slopes were worked out with a gauge circle. */
  readonly onCircle: boolean
  /** The largest circle that the gauge can go in on, over the one that is stated. */
  readonly largestCircle?: number
}

/** One explanation, with what the later reading then has to show, and the variance of the difference to it. */
export interface Supposition {
  readonly hypothesis: Hypothesis
  readonly expects: (component: Component) => Expected
  /** How many figures were fitted. */
  readonly fitted: number
}

export interface Expected {
  readonly value: number
  readonly variance: number
}
