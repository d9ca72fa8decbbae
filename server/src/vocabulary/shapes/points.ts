import { type Kind, kinds } from '../../quantity/kinds.ts'
import type { Entry } from '../../syntax/tree.ts'
import { allowedBy, type Limits, within } from '../limits.ts'
import type { Reader } from '../reader.ts'
import { isTooLong, notThis, type Placed, type Shape } from '../shape.ts'

/** A point of a curve, SI. */
export interface Point {
  readonly at: number
  readonly value: number
}

/** One of the two amounts of each point. */
interface Axis {
  readonly kind: Kind
  readonly limits: Limits
  /** What it is, without article: `boat speed`. */
  readonly words: string
}

const mostPoints = 40

/** A curve as pairs of amounts, the first of each rising: `5 kn 0.62 kN, 6 kn 1.05 kN`. Between two points it is a straight line; it is never read
 * beyond its ends (`engineering/between-points.ts`). `falling`: its value never rises. */
export function points(
  at: Axis,
  value: Axis,
  { falling = false }: { readonly falling?: boolean } = {},
): Shape<readonly Placed<Point>[]> {
  const words = `points of a curve, separated by commas: each a ${at.words} and a ${value.words}, from the lowest ${at.words} to the highest${falling ? `, the ${value.words} never rising` : ''}`
  return {
    words,
    quantity: value.kind,
    allowed: allowedBy(value.limits),
    forms: [
      {
        entries: [
          [slot(at), slot(value)],
          [slot(at), slot(value)],
        ],
        again: true,
      },
    ],
    read: (entries, reader) => {
      if (isTooLong(entries, reader, 'points', mostPoints)) return undefined
      const list: Placed<Point>[] = []
      for (const entry of entries) {
        const point = readPoint(entry, at, value, reader, words)
        if (!point) return undefined
        const before = list.at(-1)
        if (before && point.at <= before.at)
          return notThis([entry], reader, `a ${at.words} above that of the point before`)
        if (falling && before && point.value > before.value)
          return notThis([entry], reader, `a ${value.words} no greater than that of the point before`)
        list.push(point)
      }
      return list.length > 1 ? list : notThis(entries, reader, `at least two ${words}`)
    },
  }
}

const slot = ({ kind, words }: Axis) => ({
  label: words,
  doc: `${kinds[kind].words.replace(/^an? (.)/, (_, first: string) => first.toUpperCase())}, with its unit.`,
  quantity: kind,
})

function readPoint(
  entry: Entry,
  at: Axis,
  value: Axis,
  reader: Reader,
  wanted: string,
): Placed<Point> | undefined {
  const [first, second, more] = entry.parts
  if (!first || !second || more) return notThis([entry], reader, wanted)
  const [x, y] = (
    [
      [first, at],
      [second, value],
    ] as const
  ).map(([part, { kind, limits }]) =>
    within(reader.amount(part, kind), limits, { span: part.span, parts: [part], kind }, reader),
  )
  return x === undefined || y === undefined ? undefined : { at: x, value: y, span: entry.span }
}
