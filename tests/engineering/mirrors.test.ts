// Places and signs that are written otherwise than read. The figures are turned round the shaft place by place here; geometry is the reference.
import { describe, expect, it } from 'vitest'
import { type Mirror, type Swapped, writtenSo } from '../../server/src/engineering/alignment/mirrors.ts'
import { explainMismatch } from '../../server/src/engineering/alignment/mismatch.ts'
import { inBothPlanes } from '../../server/src/engineering/alignment/planes.ts'

/** Figures at top, starboard, bottom, port. */
type Round = readonly [number, number, number, number]
interface Read {
  readonly gaps: Round
  readonly offsets: Round
}
const negated = ([a, b, c, d]: Round): Round => [-a, -b, -c, -d]
const onBoth = (of: (round: Round) => Round) => (read: Read) => ({
  gaps: of(read.gaps),
  offsets: of(read.offsets),
})

/** What is written down of what is true. */
const ways: readonly (readonly [Mirror, (read: Read) => Read])[] = [
  [{ type: 'top-and-bottom-swapped' }, onBoth(([t, s, b, p]) => [b, s, t, p])],
  [{ type: 'sides-swapped' }, onBoth(([t, s, b, p]) => [t, p, b, s])],
  [{ type: 'half-turn' }, onBoth(([t, s, b, p]) => [b, p, t, s])],
  [{ type: 'quarter-turn', way: 'clockwise' }, onBoth(([t, s, b, p]) => [p, t, s, b])],
  [{ type: 'quarter-turn', way: 'counter-clockwise' }, onBoth(([t, s, b, p]) => [s, b, p, t])],
  [{ type: 'offset-signs-reversed' }, ({ gaps, offsets }) => ({ gaps, offsets: negated(offsets) })],
  [{ type: 'gap-signs-reversed' }, ({ gaps, offsets }) => ({ gaps: negated(gaps), offsets })],
]

/** Vertical: top less bottom; horizontal: starboard less port. */
const standOf = ({ gaps, offsets }: Read) => {
  const planes = ([t, s, b, p]: Round) => ({ vertical: t - b, horizontal: s - p })
  return { slope: planes(gaps), offset: planes(offsets) }
}
const first: Read = { gaps: [0.4, 0.1, -0.4, -0.1], offsets: [0.3, 0.2, -0.3, -0.2] }
const change: Read = { gaps: [0.2, -0.3, -0.2, 0.3], offsets: [-0.1, 0.25, 0.1, -0.25] }
const sum = (a: Read, b: Read): Read => {
  const of = (kind: keyof Read) => a[kind].map((value, i) => value + (b[kind][i] ?? 0)) as unknown as Round
  return { gaps: of('gaps'), offsets: of('offsets') }
}

describe.each(ways)('%o', (mirror, write) => {
  it.each(['later', 'first', 'both'] as const)('is expected where it is in: %s', (swapped: Swapped) => {
    const before = standOf(swapped === 'later' ? first : write(first))
    const moved = standOf(change)
    const truly = sum(first, change)
    const found = standOf(swapped === 'first' ? truly : write(truly))
    for (const kind of ['slope', 'offset'] as const)
      for (const plane of ['vertical', 'horizontal'] as const) {
        const at = (of: typeof plane) => ({ before: before[kind][of], change: moved[kind][of] })
        expect(writtenSo(mirror, swapped, { kind, plane }, at)).toBeCloseTo(found[kind][plane], 12)
      }
  })

  it('is named where nothing was moved, in this reading or in the first', () => {
    const stand = (read: Read) => {
      const { slope, offset } = standOf(read)
      return {
        slope: inBothPlanes((plane) => ({ value: slope[plane] / 110, standard: 1e-4 })),
        offset: inBothPlanes((plane) => ({ value: offset[plane] / 2000, standard: 6e-6 })),
      }
    }
    const feet = [-0.14, 0.14].flatMap((y) => [0.18, 0.56].map((x) => ({ name: `${x} ${y}`, x, y })))
    const still = inBothPlanes(() => ({ value: 0, standard: 0 }))
    const found = explainMismatch({
      feet,
      moves: feet.map(() => still),
      before: stand(first),
      after: stand(write(first)),
    })
    const named = found.ok ? found.value.explanations.map(({ hypothesis }) => hypothesis) : []
    expect(named).toContainEqual({ ...mirror, swapped: 'later' })
    expect(named.length).toBeLessThanOrEqual(3)
  })
})
