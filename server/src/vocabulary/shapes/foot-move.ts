import { findUnit } from '../../quantity/units.ts'
import type { Part } from '../../syntax/tree.ts'
import { closestMatch } from '../closest-match.ts'
import type { Slot } from '../form.ts'
import { type Limits, within } from '../limits.ts'
import type { Reader } from '../reader.ts'
import { notThis, type Shape } from '../shape.ts'

/** What was done to a foot. Up and starboard are positive; absent means not moved that way. */
export interface FootMove {
  /** Turn of the nut, rad. */
  readonly turn?: number
  /** Rise, m, where shims or a gauge set it. */
  readonly rise?: number
  /** Sideways, m. */
  readonly starboard?: number
}

const wanted = 'a move: `up 1 turn 2 flats`, `down 0.5 mm`, `starboard 0.2 mm`, `none`'

/** Rad, m: more than any mount or hole allows, so that a slip of the pen is told. */
const turns: Limits = { min: -1000, max: 1000 }
const lengths: Limits = { min: -1, max: 1 }

const ways = ['up', 'down', 'port', 'starboard']

const isTurn = (part: Part): boolean =>
  part.type === 'amount' && part.unit !== undefined && findUnit(part.unit.text)?.kind === 'angle'

/** `or`: what an amount without a unit might be besides a length. */
function total(
  parts: readonly Part[],
  or: 'angle' | undefined,
  reader: Reader,
): { turn: number } | { length: number } | undefined {
  const kind = parts.some(isTurn) ? 'angle' : 'length'
  let sum = 0
  for (const part of parts) {
    const value = reader.amount(part, kind, kind === 'length' ? or : undefined)
    if (value === undefined) return undefined
    sum += value
  }
  const span = { start: parts[0]?.span.start ?? 0, end: parts.at(-1)?.span.end ?? 0 }
  const limits = kind === 'angle' ? turns : lengths
  if (within(sum, limits, { span, parts, kind }, reader) === undefined) return undefined
  return kind === 'angle' ? { turn: sum } : { length: sum }
}

const upDown: Slot = { label: 'up/down', doc: 'The way the foot went.', choices: ['up', 'down'] }
const turned: Slot = {
  label: 'turns',
  doc: 'How far the nut was turned: turns, flats, or turns followed by flats: `1 turn 2 flats`.',
  quantity: 'angle',
  units: ['flat', 'turn'],
}
const flats: Slot = {
  label: 'flats',
  doc: 'Flats after the turns.',
  quantity: 'angle',
  units: ['flat'],
  optional: true,
}
const height: Slot = { label: 'height', doc: 'How far, with its unit: `0.3 mm`.', quantity: 'length' }
const sideways: readonly Slot[] = [
  { label: 'port/starboard', doc: 'The side the foot went to.', choices: ['port', 'starboard'] },
  { label: 'distance', doc: 'How far, with its unit: `0.2 mm`.', quantity: 'length' },
]

/** What was done to a foot: `up 1 turn 2 flats`, `down 0.3 mm, port 0.2 mm`. */
export const footMove: Shape<FootMove> = {
  words: wanted,
  choices: [...ways, 'none'],
  forms: [
    { entries: [[upDown, turned, flats], sideways] },
    { entries: [[upDown, height], sideways] },
    { entries: [sideways, [upDown, turned, flats]] },
    { entries: [sideways, [upDown, height]] },
    { entries: [[{ label: 'none', doc: 'The foot was left as it was.', choices: ['none'] }]] },
  ],
  read: (entries, reader) => {
    let move: FootMove = {}
    for (const entry of entries) {
      const [way, ...by] = entry.parts
      if (way?.type !== 'word') return notThis([entry], reader, wanted)
      // `none` beside another move leaves open which of the two is meant.
      if (way.text === 'none' && by.length === 0 && entries.length === 1) continue
      if (by.length > 0 && !ways.includes(way.text))
        return notThis(
          [{ parts: [way], span: way.span }],
          reader,
          `one of ${ways.join(', ')}`,
          closestMatch(way.text, ways),
        )
      if (by.length === 0) return notThis([entry], reader, wanted)
      const sign = way.text === 'up' || way.text === 'starboard' ? 1 : -1
      const sideways = way.text === 'port' || way.text === 'starboard'
      const amount = total(by, sideways ? undefined : 'angle', reader)
      if (!amount) return undefined
      if ('turn' in amount && sideways) return notThis([entry], reader, wanted)
      const part = 'turn' in amount ? 'turn' : sideways ? 'starboard' : 'rise'
      // Said twice, it is not known which is meant or whether they add up.
      if (move[part] !== undefined) return notThis([entry], reader, wanted)
      move = { ...move, [part]: sign * ('turn' in amount ? amount.turn : amount.length) }
    }
    return move
  },
}
