// The rules of what is kept, by the smallest pieces of work.
import { describe, expect, it } from 'vitest'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'
import { ask, type Ended, type Notes, Question, type Source, Trace } from '../../server/src/store/trace.ts'

/** A cell that anyone may write to. */
class Cell extends Question<number> implements Source {
  version: object = {}
  value: number

  constructor(value: number) {
    super()
    this.value = value
  }

  set(value: number): void {
    this.value = value
    this.version = {}
  }

  override answer(): number {
    return this.value
  }

  override noteSources(notes: Notes): void {
    notes.from(this)
  }
}

class Sum extends Trace {
  runs = 0
  readonly #work: () => unknown

  constructor(work: () => unknown) {
    super()
    this.#work = work
  }

  override answer(): Ended {
    if (!this.holds()) this.run()
    if (!this.ended) throw new Error('no result')
    return this.ended
  }

  override apart(): Trace {
    return new Sum(this.#work)
  }

  protected override work(): unknown {
    this.runs += 1
    return this.#work()
  }
}

const valueIn = (ended: Ended): unknown => ('value' in ended ? ended.value : ended.error)

describe('a trace', () => {
  it('holds until an answer is another', () => {
    const [a, b] = [new Cell(1), new Cell(2)]
    const sum = new Sum(() => ask(a))
    expect(valueIn(sum.answer())).toBe(1)
    b.set(3)
    a.set(1)
    expect(valueIn(sum.answer())).toBe(1)
    expect(sum.runs).toBe(1)
    a.set(5)
    expect(valueIn(sum.answer())).toBe(5)
    expect(sum.runs).toBe(2)
  })

  it('stops where a result says the same: who asked for it is not worked out again', () => {
    const cell = new Cell(3)
    const parity = new Sum(() => [ask(cell) % 2])
    const seen = new Sum(() => valueIn(ask(parity)))
    const first = valueIn(seen.answer())
    cell.set(5)
    expect(valueIn(seen.answer())).toBe(first)
    expect([parity.runs, seen.runs]).toEqual([2, 1])
    cell.set(6)
    expect(valueIn(seen.answer())).toEqual([0])
    expect(seen.runs).toBe(2)
  })

  it('is worked out again for what it came to depend on by way of another', () => {
    const [which, a, b] = [new Cell(0), new Cell(7), new Cell(7)]
    const chosen = new Sum(() => ask(ask(which) === 0 ? a : b))
    const seen = new Sum(() => valueIn(ask(chosen)))
    seen.answer()
    which.set(1)
    seen.answer()
    b.set(8)
    expect(valueIn(seen.answer())).toBe(8)
  })

  it('comes from many sources as well as from few', () => {
    for (const count of [1, 16, 17, 40]) {
      const cells = Array.from({ length: count }, (_, i) => new Cell(i))
      const sum = new Sum(() => cells.reduce((all, cell) => all + ask(cell), 0))
      const seen = new Sum(() => valueIn(ask(sum)))
      seen.answer()
      cells.at(-1)?.set(1000)
      expect(valueIn(seen.answer())).toBe(
        valueIn(new Sum(() => cells.reduce((all, c) => all + c.value, 0)).answer()),
      )
    }
  })

  it('keeps an error that says something of the job, and no other', () => {
    const cell = new Cell(1)
    const outside = new Sum(() => {
      throw new OutOfRange(`${ask(cell)} is too much`)
    })
    const before = outside.answer()
    cell.set(1)
    expect(outside.answer()).toBe(before)
    const fault = new Sum(() => {
      throw new RangeError('Maximum call stack size exceeded')
    })
    const seen = new Sum(() => {
      try {
        return valueIn(ask(fault))
      } catch {
        return 'a fault'
      }
    })
    expect(valueIn(seen.answer())).toBe('a fault')
    seen.answer()
    expect(seen.runs).toBe(2)
  })

  it('does not end with a fault that comes while it is looked at again', () => {
    const cell = new Cell(1)
    const may = new Sum(() => {
      if (ask(cell) > 1) throw new TypeError('a fault of ours')
      return 'well'
    })
    const seen = new Sum(() => {
      try {
        return valueIn(ask(may))
      } catch {
        return 'a fault'
      }
    })
    expect(valueIn(seen.answer())).toBe('well')
    cell.set(2)
    expect(valueIn(seen.answer())).toBe('a fault')
    cell.set(1)
    expect(valueIn(seen.answer())).toBe('well')
  })
})
