import type { UnitSystem } from '../quantity/kinds.ts'
import type { Status } from '../vocabulary/status.ts'
import type { Block, Section } from './model.ts'
import { type AskOther, answerOf, type OfOther, Other, type Outside } from './other.ts'
import type { Scope } from './scope.ts'

type OfName = 'named' | 'only' | 'first' | 'isTaken' | 'kindOf' | 'circular'
type Question =
  | { readonly ask: OfName; readonly key: string }
  | { readonly ask: 'another'; readonly key: string; readonly outside: Section }
  | { readonly ask: 'names' | 'system' | 'status' }
  | OfOther

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
  if ('way' in question) return answerOf(question, scope)
  if ('outside' in question) return scope.another(question.key, question.outside)
  return 'key' in question ? scope[question.ask](question.key) : scope[question.ask]()
}

/** One text for each question. */
function keyOf(question: Question): string {
  if (!('way' in question)) return 'key' in question ? `${question.ask} ${question.key}` : question.ask
  const { ask, way, fact } = question
  const from = 'name' in way.from ? `named ${way.from.name}` : `another ${way.from.kind}`
  return `${from} ${way.inside.join('.')} ${ask} ${fact}`
}

const same = (a: unknown, b: unknown): boolean =>
  a === b ||
  (Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((item, i) => item === b[i]))

/** Puts a question to the rest of the job, and notes it with its answer. */
export type Ask = (question: Question) => unknown

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
    make: (ask: Ask, section: Of) => T,
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
    const asked = new Map<string, Answered>()
    const ask: Ask = (question) => {
      const key = keyOf(question)
      const known = asked.get(key)
      if (known) return known.answer
      const answer = put(scope, question)
      asked.set(key, { question, answer })
      return answer
    }
    const value = make(ask, section)
    this.#kept.set(section, { snapshot, input, answers: [...asked.values()], value })
    return value
  }
}

/** The rest of the job with its blocks as they are bound: another answer whenever their text is. */
export const scopeOf = (ask: Ask): Scope => ({
  named: (key) => ask({ ask: 'named', key }) as Block | undefined,
  only: (key) => ask({ ask: 'only', key }) as Block | undefined,
  another: (key, outside) => ask({ ask: 'another', key, outside }) as Block | undefined,
  isTaken: (key) => ask({ ask: 'isTaken', key }) as boolean,
  ...shared(ask),
})

/** The rest of the job by what it says. */
export function outsideOf(section: Section, ask: Ask): Outside {
  const askOther = ask as AskOther
  const inside: Other['way']['inside'] = []
  return {
    named: (name) => Other.at({ from: { name }, inside }, askOther),
    only: (kind) => Other.at({ from: { kind, outside: section }, inside }, askOther),
    ...shared(ask),
  }
}

const shared = (ask: Ask) => ({
  kindOf: (key: string) => ask({ ask: 'kindOf', key }) as string | undefined,
  circular: (key: string) => ask({ ask: 'circular', key }) as boolean,
  first: (key: string) => ask({ ask: 'first', key }) as Section | undefined,
  names: () => ask({ ask: 'names' }) as readonly string[],
  system: () => ask({ ask: 'system' }) as UnitSystem,
  status: () => ask({ ask: 'status' }) as Status | undefined,
})
