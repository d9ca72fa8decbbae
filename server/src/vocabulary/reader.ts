import type { Kind, UnitSystem } from '../quantity/kinds.ts'
import type { QuantityProblem } from '../quantity/quantity.ts'
import type { Part, Span } from '../syntax/tree.ts'

/** What can be wrong with a value, as data. The check of the same name words it. */
export type ValueProblem =
  | QuantityProblem
  | {
      readonly type: 'not-this-value'
      readonly expected: string
      readonly nearest?: string
      /** What is written would be a text if it stood in quotes. */
      readonly quotes?: true
      /** A value as it would be written. */
      readonly example?: string
    }
  /** `1/2`: as a ratio with a colon, and as a plain number. */
  | { readonly type: 'ratio-unclear'; readonly ratio: string; readonly number: string }
  | { readonly type: 'outside-allowed'; readonly allowed: string }
  | {
      readonly type: 'unresolved'
      readonly path: string
      readonly nearest?: string
      readonly wanted: string
      /** The kind of block that does go by the name. */
      readonly is?: string
    }
  | {
      readonly type: 'refers-to-itself'
      readonly path: string
      /** What leads round: the value of a fact, references between top-level blocks, or the `like` of a block of this kind. */
      readonly round: 'value' | 'blocks' | { readonly likeOf: string; readonly isSelf: boolean }
    }
  /** More values than are read; `what` they are, in words. */
  | { readonly type: 'list-too-long'; readonly count: number; readonly most: number; readonly what: string }
  | { readonly type: 'no-such-date'; readonly text: string }
  | { readonly type: 'unknown-fit'; readonly text: string }

/** What a shape may ask of the job while it reads a value: amounts with references worked out, and a place for problems. */
export interface Reader {
  /** The units the job wants its results shown in. */
  readonly system: UnitSystem
  /** SI value of the part, when it is of the kind; otherwise the problem has been reported. `or`: what else it might have been of. */
  amount(part: Part, kind: Kind, or?: Kind): number | undefined
  /** As `amount`, where the part's unit may stand at another part: `84..108 V`, `35 ± 0.02 mm`. */
  amounts(parts: readonly Part[], kind: Kind): readonly (number | undefined)[]
  /** `+3/-2 mm` as two SI values, both positive. */
  sides(
    part: Part & { readonly type: 'two-sided' },
    kind: Kind,
    unitOf: Part,
  ): readonly [plus: number, minus: number] | undefined
  /** Whether a block of one of the kinds goes by this name here. Reports when none does. */
  refers(part: Part, kinds: readonly string[]): string | undefined
  problem(span: Span, problem: ValueProblem): void
}
