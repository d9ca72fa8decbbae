/** Names that stand for one thing, by union and find. */
export class SamePlaces {
  readonly #of = new Map<string, string>()

  /** One of those that are the same, for all of them. */
  of(place: string): string {
    let found = place
    for (let next = this.#of.get(found); next !== undefined; next = this.#of.get(found)) found = next
    for (let at = place; at !== found; ) {
      const next = this.#of.get(at) ?? found
      this.#of.set(at, found)
      at = next
    }
    return found
  }

  join(one: string, other: string): void {
    const [to, from] = [this.of(one), this.of(other)]
    if (to !== from) this.#of.set(from, to)
  }
}
