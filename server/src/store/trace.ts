import { OutOfRange } from '../quantity/out-of-range.ts'
import { equal } from './equal.ts'

/** What answers come from. */
export interface Source {
  /** The same object as long as nothing in it has changed. */
  readonly version: unknown
}

/** Something that can be asked. The same question is the same object, and an answer that says the same too. */
export abstract class Question<Answer = unknown> {
  /** Number of the notes that it stands in: the work that made them need not note it twice. */
  notedIn = 0

  abstract answer(): Answer

  /** Where the last answer came from. */
  abstract noteSources(notes: Notes): void
}

let notesMade = 0

/** What the work that is being done has asked. */
export class Notes {
  readonly #number = ++notesMade
  readonly questions: Question[] = []
  readonly answers: unknown[] = []
  readonly sources: Source[] = []
  readonly versions: unknown[] = []
  #last: Source | undefined
  #known: Set<Source> | undefined

  note(question: Question, answer: unknown): void {
    if (question.notedIn === this.#number) return
    question.notedIn = this.#number
    this.questions.push(question)
    this.answers.push(answer)
    question.noteSources(this)
  }

  from(source: Source): void {
    if (source === this.#last) return
    this.#last = source
    if (this.#isKnown(source)) return
    this.sources.push(source)
    this.versions.push(source.version)
  }

  /** Most work has few sources. */
  #isKnown(source: Source): boolean {
    if (this.sources.length <= few) return this.sources.includes(source)
    this.#known ??= new Set(this.sources)
    if (this.#known.has(source)) return true
    this.#known.add(source)
    return false
  }
}

/** How a piece of work ended. */
export type Ended = { readonly value: unknown } | { readonly error: unknown }

const none: readonly never[] = []

/** So many sources are looked through one by one. */
const few = 16

/** A piece of work: what it asked, and what it came to. It holds as long as each question has the answer it had. */
export abstract class Trace extends Question<Ended> implements Source {
  /** The revision of the store in which it was last known to hold. */
  revision = -1
  ended: Ended | undefined
  isRunning = false
  #questions: readonly Question[] = none
  #answers: readonly unknown[] = none
  #sources: readonly Source[] = none
  #versions: readonly unknown[] = none

  protected abstract work(): unknown

  /** The same work, to be done under a supposition. */
  abstract apart(): Trace

  /** What comes from much is a source itself: many who ask the same of a whole job would each keep all that it comes from. So is what comes from such
   * work: where that is another and this is not, whoever asked for this need not look again. */
  override noteSources(notes: Notes): void {
    if (this.#sources.length > few || this.#sources.some((source) => source instanceof Trace))
      notes.from(this)
    else for (const source of this.#sources) notes.from(source)
  }

  /** As a source: what it comes to now. */
  get version(): unknown {
    return this.answer()
  }

  /** Whether it holds: at once where nothing has changed that it comes from, else by asking again, in order, up to the first other answer. */
  holds(): boolean {
    if (!this.ended) return false
    try {
      return this.#isUntouched() || this.#isAnsweredAlike()
    } catch {
      return false // a fault of ours; whoever does the work again meets it, and knows what to do about it
    }
  }

  #isAnsweredAlike(): boolean {
    const notes = new Notes()
    for (const [i, question] of this.#questions.entries()) {
      if (question.answer() !== this.#answers[i]) return false
      question.noteSources(notes)
    }
    this.#sources = notes.sources
    this.#versions = notes.versions
    return true
  }

  #isUntouched(): boolean {
    return this.#sources.every((source, i) => source.version === this.#versions[i])
  }

  /** Does the work and notes what it asks. An error that says something of the job is its result, any other is thrown. */
  run(): void {
    const before = current
    const notes = new Notes()
    current = notes
    this.isRunning = true
    try {
      this.#end({ value: this.work() })
    } catch (error) {
      this.ended = error instanceof OutOfRange ? this.ended : undefined
      if (!(error instanceof OutOfRange)) throw error
      this.#end({ error })
    } finally {
      current = before
      this.isRunning = false
      // Copies of the length that is needed: there are many traces.
      this.#questions = notes.questions.slice()
      this.#answers = notes.answers.slice()
      this.#sources = notes.sources.slice()
      this.#versions = notes.versions.slice()
    }
  }

  /** Keeps the old result where the new one says the same, so that whoever asked for it holds too. */
  #end(ended: Ended): void {
    if (!this.ended || !isSame(this.ended, ended)) this.ended = ended
  }
}

const isSame = (a: Ended, b: Ended): boolean =>
  'value' in a ? 'value' in b && equal(a.value, b.value) : 'error' in b && isSameError(a.error, b.error)

const isSameError = (a: unknown, b: unknown): boolean =>
  a instanceof Error && b instanceof Error && a.constructor === b.constructor && a.message === b.message

let current: Notes | undefined

/** Does work whose questions are not those of the work around it. */
export function unnoted<R>(work: () => R): R {
  const before = current
  current = undefined
  try {
    return work()
  } finally {
    current = before
  }
}

/** What could not be answered is asked again each time: its answer is never the one it had. */
class Unanswered extends Question<object> implements Source {
  get version(): object {
    return {}
  }

  override answer(): object {
    return {}
  }

  override noteSources(notes: Notes): void {
    notes.from(this)
  }
}

/** Asks, and notes the answer for the work that is being done. */
export function ask<Answer>(question: Question<Answer>): Answer {
  if (!current) return question.answer()
  const notes = current
  try {
    const answer = question.answer()
    notes.note(question, answer)
    return answer
  } catch (error) {
    notes.note(new Unanswered(), undefined)
    throw error
  }
}
