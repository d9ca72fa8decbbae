/** The order in which the feet of a rigid machine are set, so that it rests on what carries it at every moment. m, rad; + up. */
import { coordinate, inRange } from '../guard.ts'
import { byStation, oneStation } from './feet.ts'

/** A foot, and how far (m, + up) it is to go. */
export type Lift = { readonly x: number; readonly y: number; readonly by: number }

/** One turn at a station: its feet, by index, and how far they go (m, + up). */
export type Visit = { readonly feet: readonly number[]; readonly by: number }

/** What holds a foot from above has to leave it free by `clearance`, per foot, over where the foot stands now. `tilt` is the greatest angle along
 * the shaft that the machine goes through, against where it stands now. */
type Room = { readonly clearance: readonly number[]; readonly tilt: number }

export type Passes = Room & { readonly passes: readonly (readonly Visit[])[] }

/** `lift`: how far the feet are lifted over what carries them then. */
export type PackChanges = Room & { readonly visits: readonly (Visit & { readonly lift: number })[] }

/** Between one end and the other the machine tilts about this off its way at most (rad). Common practice, no source. */
const tiltInPass = 2e-3

/** The centre of gravity lies at least this share of the length inside the end stations. Common practice, no source. */
const gravityInside = 0.1

/** Heights (m) nearer to each other than this are one. */
const alike = 1e-9

type LiftedStations = readonly { readonly x: number; readonly feet: readonly number[]; readonly by: number }[]

function liftedStations(lifts: readonly Lift[]): LiftedStations {
  for (const { x, y, by } of lifts) {
    coordinate('x of a foot', x)
    coordinate('y of a foot', y)
    inRange('height (m)', by, -0.1, 0.1)
  }
  const stations = byStation(lifts).map(({ x, feet }) => ({ x, feet, by: lifts[feet[0] ?? 0]?.by ?? 0 }))
  inRange('number of stations', stations.length, 2, 100)
  return stations
}

/** LiftedStations in the order that never leaves one between above the line of the ends: those between that go down, the end that goes up (that
 * furthest from the coupling first), the end that goes down, those between that go up. */
function inOrder(stations: LiftedStations, by: readonly number[]): readonly number[] {
  const last = stations.length - 1
  const far = Math.abs(stations[last]?.x ?? 0) >= Math.abs(stations[0]?.x ?? 0)
  const ends = far ? [last, 0] : [0, last]
  const between = stations.map((_, i) => i).slice(1, -1)
  const goes = (way: number) => (i: number) => (by[i] ?? 0) * way > alike
  return [
    ...between.filter(goes(-1)),
    ...ends.filter(goes(1)),
    ...ends.filter(goes(-1)),
    ...between.filter(goes(1)),
  ]
}

type Line = { readonly at: (x: number) => number; readonly slope: number }

function through(x1: number, h1: number, x2: number, h2: number): Line {
  const slope = (h2 - h1) / (x2 - x1)
  return { slope, at: (x) => h1 + slope * (x - x1) }
}

/** The lines along the shaft that a machine can lie on, wherever its centre of gravity is: the upper hull of what carries it. */
function resting(stations: LiftedStations, heights: readonly number[]): readonly Line[] {
  const [first = 0, last = 0] = [stations[0]?.x, stations.at(-1)?.x]
  const inside = gravityInside * (last - first)
  const lines: Line[] = []
  for (const [i, { x: x1 }] of stations.entries())
    for (const [j, { x: x2 }] of stations.entries()) {
      if (j <= i || x2 < first + inside || x1 > last - inside) continue
      const line = through(x1, heights[i] ?? 0, x2, heights[j] ?? 0)
      if (stations.every(({ x }, k) => (heights[k] ?? 0) <= line.at(x) + alike)) lines.push(line)
    }
  return lines
}

/** Gathers the room that the feet need while the machine lies on one line after the other. */
class RoomNeeded {
  readonly #stations: LiftedStations
  readonly #rise: number[]
  #tilt = 0

  constructor(stations: LiftedStations) {
    this.#stations = stations
    this.#rise = stations.map(() => 0)
  }

  lies(line: Line): void {
    this.#tilt = Math.max(this.#tilt, Math.abs(line.slope))
    for (const [i, { x }] of this.#stations.entries())
      this.#rise[i] = Math.max(this.#rise[i] ?? 0, line.at(x))
  }

  /** `uneven`: how far one foot of a station may stand above the next while they are set one after the other. `edge`: how far out of the middle of
   * the foot it is held. */
  room(lifts: readonly Lift[], uneven: number, edge: number): Room {
    const gaps = this.#stations.flatMap(({ feet }) => {
      const across = feet.map((i) => lifts[i]?.y ?? 0).sort((a, b) => a - b)
      return across.slice(1).map((y, i) => y - (across[i] ?? y))
    })
    const narrowest = Math.max(1e-3, Math.min(...gaps))
    const roll = gaps.length > 0 ? uneven / narrowest : 0
    const ys = lifts.map(({ y }) => y)
    // It rolls about a line through feet of one side, which may slant from one station to the next.
    const slant = this.#slant(lifts)
    const length = (this.#stations.at(-1)?.x ?? 0) - (this.#stations[0]?.x ?? 0)
    const angle = Math.hypot(this.#tilt + roll * slant, roll)
    const more = roll * (Math.max(...ys) - Math.min(...ys) + slant * length) + edge * angle
    const clearance = lifts.map(() => 0)
    for (const [s, { feet }] of this.#stations.entries())
      for (const i of feet) clearance[i] = (this.#rise[s] ?? 0) + more
    return { clearance, tilt: this.#tilt }
  }

  /** How far a side slants at most, as dy/dx between two stations. */
  #slant(lifts: readonly Lift[]): number {
    const sides = [Math.min, Math.max].map((outermost) =>
      this.#stations.map(({ x, feet }) => ({ x, y: outermost(...feet.map((i) => lifts[i]?.y ?? 0)) })),
    )
    return Math.max(
      ...sides.flatMap((side) =>
        side.flatMap((a, i) => side.slice(i + 1).map((b) => Math.abs((b.y - a.y) / (b.x - a.x)))),
      ),
    )
  }
}

/** To the nearest step; midway between two, the farther one. */
const nearest = (height: number, step: number): number =>
  Math.sign(height) * Math.floor(Math.abs(height) / step + 0.5 + 1e-6) * step

const isBetween = (i: number, { length }: LiftedStations): boolean => i > 0 && i < length - 1

/** The next step below, at least a tenth of one away. */
const stepUnder = (height: number, step: number): number => Math.ceil(height / step - 1.1) * step

const downTo = (height: number, step: number): number => Math.floor(height / step + 1e-6) * step

/** Heights of the stations after pass `k` of `count`. The ends go in proportion; what is between stays on or under their line until the last. */
function heightsAfter(k: number, count: number, stations: LiftedStations, step: number): readonly number[] {
  if (k === count) return stations.map(({ by }) => by)
  const share = k / count
  const end = (i: number) => nearest((stations.at(i)?.by ?? 0) * share, step)
  const line = through(stations[0]?.x ?? 0, end(0), stations.at(-1)?.x ?? 0, end(-1))
  return stations.map(({ x, by }, i) =>
    i === 0 || i === stations.length - 1 ? end(i) : downTo(Math.min(line.at(x), by * share), step),
  )
}

/** Heights after each pass, in as few passes as the greatest visit (m) allows, at the ends and between. */
function fewest(stations: LiftedStations, step: number, atEnds: number, between: number) {
  const farthest = Math.max(...stations.map(({ by }) => Math.abs(by)))
  const last = stations.length - 1
  const farthestEnd = Math.max(Math.abs(stations[0]?.by ?? 0), Math.abs(stations[last]?.by ?? 0))
  const least = Math.ceil(Math.max(farthest / between, farthestEnd / atEnds) - 1e-6)
  const most = 2 * Math.ceil(farthest / step) + 2
  for (let count = Math.max(1, least); ; count++) {
    const after = Array.from({ length: count }, (_, k) => heightsAfter(k + 1, count, stations, step))
    const fits = after.every((heights, k) =>
      heights.every((height, i) => {
        const from = after[k - 1]?.[i] ?? 0
        const inTheWay = k === count - 1 && isBetween(i, stations) && height < from - alike
        const by = Math.abs((inTheWay ? stepUnder(height, step) : height) - from)
        return by <= (isBetween(i, stations) ? between : atEnds) + alike
      }),
    )
    if (fits || count >= most) return after
  }
}

/** Passes that bring the feet of a machine, all free above and resting on lower nuts, to their heights; feet of one station go alike, by the
 * height of the first. Each visit goes at most `most` (m, 1 µm to 0.1 m) and tilts the machine at most 2 mrad off its way (common practice, no
 * source), to the nearest `step` (m, 1 µm to 0.1 m) and never less than one; the ends go in proportion, rounded to the step, and the sum is exactly what is asked.
 *
 * In a pass go first the stations between that go down, then the end that goes up, then the end that goes down, then the stations between that go
 * up; in the last pass those between that went down go a step too far, and come up to their height at the end, so that a nut is run up to its foot: so none between ever stands above the line of the ends, but for what the heights asked for leave, and the machine rests on its ends without
 * rocking [derived].
 *
 * `clearance`: the greatest height the foot reaches on the upper hull of the nuts, with its centre of gravity a tenth of the length or more inside
 * the ends (common practice, no source); what rolls it while the nuts of a station are turned one after the other, by at most `uneven` (m, 0 to 0.1)
 * at a time; and the angle times `edge` (m, 0 to 0.1), the radius at which the foot is held [derived]. OutOfRange on a bad number, a height beyond
 * 0.1 m, or fewer than two stations.
 * @example passesOf([{ x: 0.2, y: 0, by: 0 }, { x: 0.6, y: 0, by: 1e-3 }], { step: 1e-3, most: 1e-3, uneven: 0, edge: 0 }).tilt // ≈ 2.5e-3 */
export function passesOf(
  lifts: readonly Lift[],
  limits: { readonly step: number; readonly most: number; readonly uneven: number; readonly edge: number },
): Passes {
  const stations = liftedStations(lifts)
  const step = inRange('step (m)', limits.step, 1e-6, 0.1)
  const between = Math.max(step, inRange('greatest visit (m)', limits.most, 1e-6, 0.1))
  const length = (stations.at(-1)?.x ?? 0) - (stations[0]?.x ?? 0)
  const atEnds = Math.max(step, Math.min(between, nearest(tiltInPass * length, step)))
  const after = fewest(stations, step, atEnds, between)
  const heights = stations.map(() => 0)
  const needed = new RoomNeeded(stations)
  let largest = 0
  const go = (i: number, to: number): Visit => {
    const by = to - (heights[i] ?? 0)
    heights[i] = to
    for (const line of resting(stations, heights)) needed.lies(line)
    largest = Math.max(largest, Math.abs(by))
    return { feet: stations[i]?.feet ?? [], by }
  }
  const passes = after.map((next, k) => {
    const by = next.map((height, i) => height - (heights[i] ?? 0))
    const order = inOrder(stations, by)
    if (k < after.length - 1) return order.map((i) => go(i, next[i] ?? 0))
    // A nut between the ends can only be run up to its foot: where the foot comes down in the end, its nut goes out of the way before.
    const under = order.filter((i) => isBetween(i, stations) && (by[i] ?? 0) < 0)
    return [
      ...order.map((i) => go(i, under.includes(i) ? stepUnder(next[i] ?? 0, step) : (next[i] ?? 0))),
      ...under.map((i) => go(i, next[i] ?? 0)),
    ]
  })
  const uneven = Math.min(largest, inRange('unevenness (m)', limits.uneven, 0, 0.1))
  return {
    passes: passes.filter((visits) => visits.length > 0),
    ...needed.room(lifts, uneven, inRange('edge (m)', limits.edge, 0, 0.1)),
  }
}

/** The order in which the packs under a machine are changed, its fastenings slack: stations in the order of `passesOf`, each once. The end is lifted
 * whose pack is changed, for a station between the end that is nearer, until its feet stand `gap` (m, 0 to 0.1) above the thicker of the old pack
 * and the new, rounded up to a whole `step` (m, 1 µm to 0.1 m); the machine meanwhile lies on the other end. `clearance` and `edge` as in `passesOf`; the feet of a station are lifted alike. [derived] OutOfRange as there.
 * @example packChanges([{ x: 0.2, y: 0, by: 0 }, { x: 0.6, y: 0, by: -1e-3 }], { gap: 1e-3, step: 5e-4, edge: 0 }).visits[0].lift // 1e-3 */
export function packChanges(
  lifts: readonly Lift[],
  limits: { readonly gap: number; readonly step: number; readonly edge: number },
): PackChanges {
  const stations = liftedStations(lifts)
  const gap = inRange('gap (m)', limits.gap, 0, 0.1)
  const step = inRange('step (m)', limits.step, 1e-6, 0.1)
  const heights = stations.map(() => 0)
  const needed = new RoomNeeded(stations)
  const [first, last] = [stations[0]?.x ?? 0, stations.at(-1)?.x ?? 0]
  const visits = inOrder(
    stations,
    stations.map(({ by }) => by),
  ).map((i) => {
    const { x, feet, by } = stations[i] ?? { x: 0, feet: [], by: 0 }
    const lift = Math.ceil((Math.max(0, by) + gap) / step - 1e-6) * step
    // The farther end stays; of two as far either may, for who lifts cannot tell which is the nearer.
    for (const stays of [stations.length - 1, 0]) {
      const end = stations[stays]?.x ?? 0
      if (Math.abs(end - x) >= Math.max(x - first, last - x) - oneStation)
        needed.lies(through(end, heights[stays] ?? 0, x, lift))
    }
    heights[i] = by
    for (const line of resting(stations, heights)) needed.lies(line)
    return { feet, by, lift }
  })
  return { visits, ...needed.room(lifts, 0, inRange('edge (m)', limits.edge, 0, 0.1)) }
}
