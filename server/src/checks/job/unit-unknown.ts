import type { Block, Place } from '../../job/model.ts'
import { elide } from '../../quantity/elide.ts'
import type { Kind } from '../../quantity/kinds.ts'
import { unitOfMark } from '../../quantity/quantity.ts'
import { findUnit } from '../../quantity/units.ts'
import { canBe } from '../../vocabulary/fitting-units.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { declaredAt } from '../declared-at.ts'
import { factAt, replace, textAt, useNearest } from '../fix-text.ts'

/** Whether the nearest unit is of the kind that is expected. */
const mayBeMeant = ({
  nearest,
  expected,
}: {
  readonly nearest?: string
  readonly expected?: Kind
}): boolean => nearest !== undefined && (expected === undefined || findUnit(nearest)?.kind === expected)

/** The plain number that a unit stands behind. */
const numberBefore = ({ section, span }: Place): string | undefined =>
  /[\d./]+(?=\s*$)/.exec(section.text.slice(Math.max(0, span.start - 40), span.start))?.[0]

/** Whether a unit was meant at a place: one of the kind that is wanted there, in which the number is within what the fact can be. In an arithmetic
 * the amounts may be of any kind. */
function mayBe(near: string, at: Place, wanted: Kind | undefined, block: Block | undefined): boolean {
  const isArithmetic = factAt(block, at)?.entries.some(({ parts }) =>
    parts.some(({ type }) => type === 'operation'),
  )
  if (isArithmetic || wanted === undefined) return true
  if (findUnit(near)?.kind !== wanted) return false
  const [number, fact] = [numberBefore(at), declaredAt(block, at)]
  return number === undefined || fact?.shape.quantity !== wanted || canBe(number, near, fact)
}

export default problemCheck({
  id: 'job/unit-unknown',
  problem: 'unknown-unit',
  severity: 'error',
  title: 'Unknown unit',
  why: 'An amount in an unknown unit cannot be used.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mn
#                  ^^ not a unit
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p) => ({
    message: `${elide(p.unit)} is not a unit known here.`,
    todo: mayBeMeant(p) ? `Did you mean ${p.nearest}?` : 'Write one of the units in the reference.',
    found: elide(p.unit),
    data: { ...(p.nearest && { nearest: p.nearest }), ...(p.expected && { kind: p.expected }) },
  }),
  fixes: ({ at, data }, { block }) => {
    const near = data?.nearest
    if (near === undefined || !mayBe(near, at, data?.kind, block)) return []
    // Letters of a unit say something by their case, m is milli and M mega: none is fixed without asking.
    // A sign touches its number, a unit does not.
    if (unitOfMark(textAt(at)) !== undefined)
      return useNearest(at, near).map((fix) => ({ ...fix, edits: [replace(at, ` ${near}`)] }))
    return useNearest(at, near).map(({ safe: _, ...fix }) => fix)
  },
})
