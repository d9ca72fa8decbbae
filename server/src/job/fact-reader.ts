import type { Kind, UnitSystem } from '../quantity/kinds.ts'
import {
  asKind,
  type Outcome,
  parseNumber,
  type Quantity,
  type QuantityProblem,
} from '../quantity/quantity.ts'
import type { Part, Span } from '../syntax/tree.ts'
import type { Fact } from '../vocabulary/block.ts'
import { fittingUnits } from '../vocabulary/fitting-units.ts'
import type { Reader, ValueProblem } from '../vocabulary/reader.ts'
import type { Draft } from './draft.ts'
import type { BindingProblem } from './model.ts'

/** What a value is worked out with: the job around it, and where problems go. */
export interface Evaluation {
  readonly system: UnitSystem
  readonly report: (span: Span, problem: BindingProblem) => void
  readonly textOf: (span: Span) => string
  /** The part worked out, references and arithmetic too; undefined where what is wrong has been told. */
  readonly evaluate: (part: Part, block: Draft, expected: Kind) => Outcome<Quantity> | undefined
  /** The name of a block of one of the kinds, seen from the draft; undefined where none goes by it, which has been told. */
  readonly refers: (part: Part, block: Draft, kinds: readonly string[]) => string | undefined
}

/** What the shape of one fact asks while its value is read. */
export class FactReader implements Reader {
  readonly #with: Evaluation
  readonly #block: Draft
  readonly #fact: Fact

  constructor(evaluation: Evaluation, block: Draft, fact: Fact) {
    this.#with = evaluation
    this.#block = block
    this.#fact = fact
  }

  get system(): UnitSystem {
    return this.#with.system
  }

  amount(part: Part, kind: Kind, or?: Kind): number | undefined {
    const outcome = this.#with.evaluate(part, this.#block, kind)
    if (!outcome) return undefined
    const fitted = outcome.ok ? asKind(outcome.value, kind) : outcome
    if (fitted.ok) return fitted.value.si
    const bare = this.#bareNumber(part, fitted.problem)
    const reported: QuantityProblem = bare ? { type: 'no-unit', expected: kind, likely: '' } : fitted.problem
    const span = bare ?? problemSpan(part, reported)
    if (reported.type === 'no-unit') {
      const wanted = or ? [kind, or] : [kind]
      const [likely = reported.likely] = fittingUnits(
        this.#with.textOf(span),
        wanted,
        this.#fact,
        this.system,
      )
      this.problem(span, { ...reported, ...(or && { or }), likely })
    } else this.problem(span, reported)
    return undefined
  }

  /** The number of `140 port` and `35 h9`, whose unit is missing before a word that may follow. */
  #bareNumber(part: Part, { type }: QuantityProblem): Span | undefined {
    if (type !== 'unknown-unit' || part.type !== 'amount' || !part.unit) return undefined
    const { text, span } = part.unit
    const slots = this.#fact.shape.forms?.flatMap(({ entries }) => entries.flat()) ?? []
    if (!slots.some(({ choices }) => choices?.includes(text))) return undefined
    const before = this.#with.textOf({ start: part.span.start, end: span.start })
    return { start: part.span.start, end: part.span.start + before.trimEnd().length }
  }

  amounts(parts: readonly Part[], kind: Kind): readonly (number | undefined)[] {
    const unit = parts.flatMap((p) => (p.type === 'amount' && p.unit ? [p.unit] : []))[0]
    return parts.map((p) => this.amount(p.type === 'amount' && !p.unit && unit ? { ...p, unit } : p, kind))
  }

  sides(
    part: Part & { readonly type: 'two-sided' },
    kind: Kind,
    unitOf: Part,
  ): readonly [plus: number, minus: number] | undefined {
    const unit = part.unit ?? (unitOf.type === 'amount' ? unitOf.unit : undefined)
    const numbers = /^([+\-−])(.+?)\s?\/\s?([+\-−])(.+)$/.exec(part.text)
    if (!numbers) return undefined
    const side = (text: string) => this.amount({ type: 'amount', number: text, unit, span: part.span }, kind)
    const first = side(numbers[2] ?? '')
    const second = parseNumber(numbers[4] ?? '') === 0 ? 0 : side(numbers[4] ?? '')
    if (first === undefined || second === undefined) return undefined
    return numbers[1] === '+' ? [first, second] : [second, first]
  }

  refers(part: Part, kinds: readonly string[]): string | undefined {
    return this.#with.refers(part, this.#block, kinds)
  }

  /** A value of another form is answered with the fact's own example. */
  problem(span: Span, problem: ValueProblem): void {
    const { example } = this.#fact
    this.#with.report(span, problem.type === 'not-this-value' ? { ...problem, example } : problem)
  }
}

/** A wrong unit is marked itself; anything else, the whole amount. */
const problemSpan = (part: Part, problem: QuantityProblem): Span =>
  (problem.type === 'unknown-unit' ? unitSpan(part, problem.unit) : undefined) ?? part.span

/** Where a unit stands in an amount, or first in an arithmetic. */
function unitSpan(part: Part, unit: string): Span | undefined {
  if (part.type === 'amount') return part.unit?.text === unit ? part.unit.span : undefined
  if (part.type === 'negated') return unitSpan(part.of, unit)
  return part.type === 'operation' ? (unitSpan(part.left, unit) ?? unitSpan(part.right, unit)) : undefined
}
