/** What stands in the way of a result. */
export interface Fault<Type extends string = string> {
  readonly type: Type
  /** For a person. */
  readonly words: string
}

interface Ok<T> {
  readonly ok: true
  readonly value: T
}

interface Failed<F extends Fault> {
  readonly ok: false
  readonly fault: F
}

/** A result, or what stands in its way, which is data too. */
export type Outcome<T, F extends Fault = Fault> = Ok<T> | Failed<F>

export const ok = <T>(value: T): Ok<T> => ({ ok: true, value })
export const failed = <F extends Fault>(fault: F): Failed<F> => ({ ok: false, fault })
