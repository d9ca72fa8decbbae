import type { Kind } from '../quantity/kinds.ts'
import { findKind } from '../vocabulary/index.ts'
import type { Draft } from './draft.ts'
import { type Block, isAssumed, type Way } from './model.ts'
import type { Scope } from './scope.ts'
import { isPending, leftOut } from './take-over.ts'

export function blockAt({ from, inside }: Way, scope: Scope): Block | undefined {
  let block = 'name' in from ? scope.named(from.name) : scope.another(from.kind, from.outside)
  for (const index of inside) block = block?.children[index]
  return block
}

/** What a block says of a fact, as far as another value is worked out from it. `unread`: it is written and could not be read. `pending`: it will be
 * said, as a `?` stands for it, or the other drive says it and it is not taken. */
export type Stated =
  | readonly [is: 'value', amount: number | undefined, kind: Kind | undefined, isAssumed: boolean]
  | readonly [is: 'unread' | 'pending']

export function statedBy(block: Draft, fact: string): Stated | undefined {
  const value = block.facts.get(fact)
  if (value) {
    const amount =
      typeof value.value === 'number'
        ? value.value
        : (value.value as { readonly nominal?: number } | undefined)?.nominal
    return ['value', amount, block.definition?.facts[fact]?.shape.quantity, isAssumed(value)]
  }
  const isWritten = block.unread.has(fact) || leftOut(block).has(fact)
  return isWritten ? [isPending(block, fact) ? 'pending' : 'unread'] : undefined
}

/** Names of the facts of a block that are an amount, read by now or not. */
export function amountsOf(block: Draft): readonly string[] {
  const facts = findKind(block.kind)?.facts ?? {}
  const stated = new Set([...block.facts.keys(), ...block.written.keys()])
  return [...stated].filter((name) => Object.hasOwn(facts, name) && facts[name]?.shape.quantity !== undefined)
}

const heading = ({ kind, name }: Block): string => (name === undefined ? kind : `${kind} ${name}`)

/** What is asked of a block of another section. All but the block itself is compared by value. */
const answers = {
  heading: (block: Draft) => heading(block),
  inside: (block: Draft) => block.children.map(heading),
  stated: (block: Draft, fact: string) => statedBy(block, fact),
  amounts: (block: Draft) => amountsOf(block),
  itself: (block: Draft) => block,
}

type Answers = { readonly [K in keyof typeof answers]: ReturnType<(typeof answers)[K]> }

export interface OfOther<K extends keyof Answers = keyof Answers> {
  readonly ask: K
  readonly way: Way
  readonly fact: string
}

export type AskOther = <K extends keyof Answers>(question: OfOther<K>) => Answers[K] | undefined

/** Undefined also where the way leads to no block. */
export function answerOf({ ask, way, fact }: OfOther, scope: Scope): unknown {
  const block = blockAt(way, scope)
  return block && answers[ask](block as Draft, fact)
}

/** A block of another section, as seen from one that is given its meaning: what it says, not where. Whoever needs the block itself is bound again
 * whenever that is. */
export class Other {
  readonly kind: string
  readonly name: string | undefined
  readonly way: Way
  readonly #ask: AskOther
  #children: readonly Other[] | undefined

  constructor(way: Way, heading: string, ask: AskOther) {
    const [kind = '', name] = heading.split(' ')
    this.kind = kind
    this.name = name
    this.way = way
    this.#ask = ask
  }

  /** Undefined where there is no block. */
  static at(way: Way, ask: AskOther): Other | undefined {
    const found = ask({ ask: 'heading', way, fact: '' })
    return found === undefined ? undefined : new Other(way, found, ask)
  }

  get children(): readonly Other[] {
    const { from, inside } = this.way
    this.#children ??= (this.#ask({ ask: 'inside', way: this.way, fact: '' }) ?? []).map(
      (child, i) => new Other({ from, inside: [...inside, i] }, child, this.#ask),
    )
    return this.#children
  }

  stated(fact: string): Stated | undefined {
    return this.#ask({ ask: 'stated', way: this.way, fact })
  }

  get amounts(): readonly string[] {
    return this.#ask({ ask: 'amounts', way: this.way, fact: '' }) ?? []
  }

  get itself(): Draft | undefined {
    return this.#ask({ ask: 'itself', way: this.way, fact: '' })
  }
}

/** What a section may ask while it is given its meaning: it sees blocks of other sections by what they say. */
export interface Outside
  extends Pick<Scope, 'kindOf' | 'circular' | 'names' | 'first' | 'system' | 'status'> {
  named(name: string): Other | undefined
  /** The only one of the kind in other sections of the file itself. */
  only(kind: string): Other | undefined
}
