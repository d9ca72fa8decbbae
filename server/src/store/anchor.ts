import type { Place, Section, Taken } from '../job/model.ts'
import type { Span } from '../syntax/tree.ts'

/** Somewhere in a job by what stands there: it moves with its text. Where it is now is read when it is shown. */
export class Anchor implements Place {
  readonly #find: () => Place

  constructor(find: () => Place) {
    this.#find = find
  }

  get section(): Section {
    return this.#find().section
  }

  get span(): Span {
    return this.#find().span
  }

  get taken(): Taken | undefined {
    return this.#find().taken
  }

  /** The place as it is now. */
  get now(): Place {
    return this.#find()
  }
}

/** Where something stands now. */
export const placeNow = (place: Place): Place => (place instanceof Anchor ? place.now : place)
