import type { UnitSystem } from '../quantity/kinds.ts'
import type { Status } from '../vocabulary/status.ts'
import type { Block, Section } from './model.ts'
import type { Scope } from './scope.ts'

type OfName = 'named' | 'ofKind' | 'only' | 'first' | 'isTaken' | 'kindOf' | 'circular'
type Question =
  | { readonly ask: OfName; readonly key: string }
  | { readonly ask: 'names' | 'system' | 'status' | 'outline' }

interface Answered {
  readonly question: Question
  readonly answer: unknown
}

/** A state of the job as seen from one file. One text may be asked as part of several jobs, and mean something else in each. */
export type Snapshot = symbol

interface Remembered<T> {
  snapshot: Snapshot
  readonly input: unknown
  readonly answers: readonly Answered[]
  readonly value: T
}

function put(scope: Scope, question: Question): unknown {
  return 'key' in question ? scope[question.ask](question.key) : scope[question.ask]()
}

const same = (a: unknown, b: unknown): boolean =>
  a === b ||
  (Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((item, i) => item === b[i]))

/** Keeps one result for each section, or for whatever else a result can be of. It is made again only when the section is new, when its input is another, or when a question it asked of
 * the job has another answer now. */
export class Memo<T, Of extends WeakKey = Section> {
  readonly #kept = new WeakMap<Of, Remembered<T>>()

  /** The section's result, where it is known to hold at this snapshot. */
  current(section: Of, snapshot: Snapshot): T | undefined {
    const kept = this.#kept.get(section)
    return kept?.snapshot === snapshot ? kept.value : undefined
  }

  /** The section's result. */
  get(
    section: Of,
    { snapshot, scope, input }: { snapshot: Snapshot; scope: Scope; input?: unknown },
    make: (asking: Scope, section: Of) => T,
  ): T {
    const kept = this.#kept.get(section)
    if (kept?.snapshot === snapshot) return kept.value
    if (
      kept?.input === input &&
      kept?.answers.every(({ question, answer }) => same(put(scope, question), answer))
    ) {
      kept.snapshot = snapshot
      return kept.value
    }
    const asked = new Map<unknown, Answered>()
    const asking = (question: Question): unknown => {
      const key = 'key' in question ? `${question.ask} ${question.key}` : question.ask
      const known = asked.get(key)
      if (known) return known.answer
      const answer = put(scope, question)
      asked.set(key, { question, answer })
      return answer
    }
    const through: Scope = {
      named: (key) => asking({ ask: 'named', key }) as Block | undefined,
      ofKind: (key) => asking({ ask: 'ofKind', key }) as readonly Block[],
      only: (key) => asking({ ask: 'only', key }) as Block | undefined,
      kindOf: (key) => asking({ ask: 'kindOf', key }) as string | undefined,
      circular: (key) => asking({ ask: 'circular', key }) as boolean,
      first: (key) => asking({ ask: 'first', key }) as Section | undefined,
      names: () => asking({ ask: 'names' }) as readonly string[],
      system: () => asking({ ask: 'system' }) as UnitSystem,
      status: () => asking({ ask: 'status' }) as Status | undefined,
      isTaken: (key) => asking({ ask: 'isTaken', key }) as boolean,
      outline: () => asking({ ask: 'outline' }) as readonly unknown[],
    }
    const value = make(through, section)
    this.#kept.set(section, { snapshot, input, answers: [...asked.values()], value })
    return value
  }
}
