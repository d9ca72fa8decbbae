/** A thing that asks for others while it is made. */
export interface Asker {
  /** Its place in the row of those that wait for each other; undefined once it is made. */
  place: number | undefined
  /** The earliest in the row that it leads back to, as far as is known; itself where there is none. */
  back: Asker
}

/** What is being made, each asked for by the one before it, and what leads back to them (Tarjan's strongly connected components). */
export class Row<Of> {
  readonly #row: { readonly of: Of; readonly asker: Asker }[] = []

  get last(): Of | undefined {
    return this.#row.at(-1)?.of
  }

  get length(): number {
    return this.#row.length
  }

  push(of: Of): Asker {
    const asker: Asker = { place: this.#row.length, back: undefined as never }
    asker.back = asker
    this.#row.push({ of, asker })
    return asker
  }

  /** The last is made. What it leads back to, the one that asked for it leads back to. */
  pop(): void {
    const asker = this.#row.pop()?.asker
    if (!asker) return
    asker.place = undefined
    const before = this.#row.at(-1)?.asker
    if (before && asker.back !== asker) leadBack(before, asker.back)
  }

  /** Ends everything, after a failure. */
  clear(): void {
    while (this.#row.length > 0) this.pop()
  }

  /** Whether what the last asks for leads back to it. */
  leadsBack(asked: Asker): boolean {
    const last = this.#row.at(-1)?.asker
    const to = inRow(asked)
    if (!last || !to) return false
    leadBack(last, to)
    return true
  }
}

function leadBack(from: Asker, to: Asker): void {
  if ((to.place ?? 0) < (from.back.place ?? 0)) from.back = to
}

/** The one in the row that this is or leads to; undefined where it leads to none. */
function inRow(asker: Asker): Asker | undefined {
  let at = asker
  while (at.place === undefined && at.back !== at) at = at.back
  for (let each = asker; each !== at; ) {
    const { back } = each
    each.back = at
    each = back
  }
  return at.place === undefined ? undefined : at
}
