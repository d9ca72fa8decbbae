import type { UnitSystem } from '../quantity/kinds.ts'
import type { Block, Section } from './model.ts'
import type { Scope } from './scope.ts'

type Question =
  | { readonly ask: 'named' | 'holder' | 'ofKind' | 'holders' | 'first'; readonly key: string }
  | { readonly ask: 'names' | 'system' }

interface Answered {
  readonly question: Question
  readonly answer: unknown
}

/** A state of the job as seen from one file. One text may be asked as part of several jobs, and mean something else in each. */
export type Moment = symbol

interface Remembered<T> {
  moment: Moment
  readonly input: unknown
  readonly answers: readonly Answered[]
  readonly value: T
}

const put = (scope: Scope, question: Question): unknown =>
  'key' in question ? scope[question.ask](question.key) : scope[question.ask]()

const same = (a: unknown, b: unknown): boolean =>
  a === b ||
  (Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((item, i) => item === b[i]))

/** More sections than this are not made one inside the other: only a circle of references gets so deep. */
const deepest = 100

/** Keeps one result a section. It is made again only when the section is new, when its input is another, or when a question it asked of
 * the job has another answer now. */
export class Memo<T> {
  readonly #kept = new WeakMap<Section, Remembered<T>>()
  readonly #running = new Set<Section>()

  /** The section's result, where it is known to hold at this moment. */
  current(section: Section, moment: Moment): T | undefined {
    const kept = this.#kept.get(section)
    return kept?.moment === moment ? kept.value : undefined
  }

  /** The section's result; undefined while it is being made, which happens only when sections refer to each other in a circle. */
  get(
    section: Section,
    { moment, scope, input }: { moment: Moment; scope: Scope; input?: unknown },
    make: (asking: Scope, section: Section) => T,
  ): T | undefined {
    const kept = this.#kept.get(section)
    if (kept?.moment === moment) return kept.value
    if (this.#running.has(section) || this.#running.size >= deepest) return undefined
    this.#running.add(section)
    try {
      if (
        kept?.input === input &&
        kept?.answers.every(({ question, answer }) => same(put(scope, question), answer))
      ) {
        kept.moment = moment
        return kept.value
      }
      const asked = new Map<string, Answered>()
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
        holder: (key) => asking({ ask: 'holder', key }) as Section | undefined,
        ofKind: (key) => asking({ ask: 'ofKind', key }) as readonly Block[],
        holders: (key) => asking({ ask: 'holders', key }) as readonly Section[],
        first: (key) => asking({ ask: 'first', key }) as Section | undefined,
        names: () => asking({ ask: 'names' }) as readonly string[],
        system: () => asking({ ask: 'system' }) as UnitSystem,
      }
      const value = make(through, section)
      this.#kept.set(section, { moment, input, answers: [...asked.values()], value })
      return value
    } finally {
      this.#running.delete(section)
    }
  }
}
