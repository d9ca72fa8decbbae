import type { FixGround } from '../../checks/check.ts'
import type { Edit, Fix } from '../../checks/fix.ts'
import { addAfter, blank, replace, textAt } from '../../checks/fix-text.ts'
import type { Hypothesis } from '../../engineering/alignment/hypothesis.ts'
import type { Block, Value } from '../../job/model.ts'
import type { Entry } from '../../syntax/tree.ts'
import { moveDiscrepancy } from './plans/move-discrepancy.ts'
import { movedIn } from './plans/moved-in-words.ts'
import { movesCompared } from './plans/reading-comparison.ts'

const oppositeHeight: Readonly<Record<string, string>> = { up: 'down', down: 'up' }

const directionOf = ({ parts: [first] }: Entry): string => (first?.type === 'word' ? first.text : '')
const isHeight = (entry: Entry): boolean => directionOf(entry) in oppositeHeight

/** The move of a foot with only the entries that were made. */
function keeping(
  { at: { section }, node }: Value<unknown>,
  made: (entry: Entry) => boolean,
): readonly Edit[] {
  const kept = node.entries.filter(made)
  if (kept.length === node.entries.length || node.entries.every((entry) => directionOf(entry) === 'none'))
    return []
  const text = kept.map(({ span }) => textAt({ section, span })).join(', ')
  return [replace({ section, span: node.valueSpan }, text === '' ? 'none' : text)]
}

/** The ways of the heights turned round. */
const turnedRound = ({ at: { section }, node }: Value<unknown>): readonly Edit[] =>
  node.entries.flatMap(({ parts: [way] }) => {
    const now = way?.type === 'word' ? oppositeHeight[way.text] : undefined
    return way && now !== undefined ? [replace({ section, span: way.span }, now)] : []
  })

/** A second move after the same reading, foot by foot like the first. When it was made is for the person to write. */
const onceMore = (move: Block): Edit =>
  addAfter(
    move,
    [
      `move after ${move.about?.text} {`,
      `  done: ${blank}`,
      ...movedIn(move).map(({ foot, words }) => `  ${foot}: ${words}`),
      '}',
    ].join('\n'),
  )

function edits(of: Hypothesis, move: Block): readonly Edit[] {
  const feet = [...move.others]
  switch (of.type) {
    case 'turned-the-wrong-way':
      return feet.flatMap(([name, value]) => (of.feet.includes(name) ? turnedRound(value) : []))
    case 'forgotten':
      return feet.flatMap(([name, value]) =>
        of.feet.includes(name) ? keeping(value, (entry) => !isHeight(entry)) : [],
      )
    case 'sideways-not-done':
      return feet.flatMap(([, value]) => keeping(value, isHeight))
    case 'made-twice':
      return move.about ? [onceMore(move)] : []
    default:
      return []
  }
}

/** The one move before a reading as the reading says that it was made, where one explanation alone fits and it is of the move. */
export function writeAsMade({ block: reading, lookup }: FixGround): readonly Fix[] {
  const discrepancy = reading && lookup && moveDiscrepancy(reading, lookup)
  if (!discrepancy) return []
  const [only, ...more] = discrepancy.comparison.mismatch.explanations
  const [move, ...others] = movesCompared(discrepancy.comparison, lookup.block)
  if (!only || more.length > 0 || !move || others.length > 0) return []
  const made = edits(only.hypothesis, move)
  return made.length > 0
    ? [{ title: 'Write the move as it was made', edits: made, leaves: ['job/fact-missing'] }]
    : []
}
