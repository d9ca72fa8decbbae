import { type Block, factOf } from '../../job/model.ts'
import { OutOfRange } from '../../quantity/out-of-range.ts'
import type { FactPath, FactValue } from '../../vocabulary/index.ts'

/** A fact that is written but could not be read, or is outside what it can be. */
export class Unreadable extends OutOfRange {
  /** What to do about it. */
  get todo(): string {
    return 'Correct that first.'
  }
}

/** A fact that is written as not known yet. */
class NotKnownYet extends Unreadable {
  override get todo(): string {
    return 'Fill that in first.'
  }
}

/** The value of a fact, undefined when the block is silent. Unreadable when it is written but could not be read: that is no silence, and no
 * default may stand in for it. */
export function statedFact<P extends FactPath>(block: Block | undefined, path: P): FactValue<P> | undefined {
  const name = path.slice(path.indexOf('.') + 1)
  if (block?.blanks.has(name))
    throw new NotKnownYet(`the ${name} of the ${block.kind} ${isPlural(name) ? 'are' : 'is'} not known yet`)
  if (block?.unread.has(name)) throw new Unreadable(`${name} of the ${block.kind} cannot be used as written`)
  return block && factOf(block, path)?.value
}

const isPlural = (name: string): boolean => /^(bolts|gaps|lifts|offsets|terminals)\b/.test(name)

/** Undefined where something that is written cannot be read. */
export function readable<T>(read: () => T): T | undefined {
  try {
    return read()
  } catch (error) {
    if (error instanceof Unreadable) return undefined
    throw error
  }
}
