import type {
  DcNetwork,
  NetworkLink,
  NetworkSource,
} from '../../../server/src/engineering/electrical/dc-network.ts'

/** A number as a fraction, without rounding. */
interface Ratio {
  readonly over: bigint
  readonly under: bigint
}

const gcd = (a: bigint, b: bigint): bigint => (b === 0n ? a : gcd(b, a % b))
function ratio(over: bigint, under = 1n): Ratio {
  const sign = under < 0n ? -1n : 1n
  const by = gcd(over < 0n ? -over : over, under < 0n ? -under : under) || 1n
  return { over: (sign * over) / by, under: (sign * under) / by }
}
const zero = ratio(0n)
const plus = (a: Ratio, b: Ratio) => ratio(a.over * b.under + b.over * a.under, a.under * b.under)
const times = (a: Ratio, b: Ratio) => ratio(a.over * b.over, a.under * b.under)
const less = (a: Ratio, b: Ratio) => plus(a, times(ratio(-1n), b))
const by = (a: Ratio, b: Ratio) => ratio(a.over * b.under, a.under * b.over)
const isZero = (a: Ratio) => a.over === 0n

/** To the nearest double but one, however large both numbers are. */
function double({ over, under }: Ratio): number {
  const size = over < 0n ? -over : over
  const shift = BigInt(Math.max(0, 64 + under.toString(2).length - size.toString(2).length))
  return (Math.sign(Number(over)) * Number((size << shift) / under)) / 2 ** Number(shift)
}

/** A resistance of so many µΩ, a voltage of so many mV, a current of so many mA: what random networks are made of, so that all is exact. */
const micro = (value: number) => ratio(BigInt(Math.round(value * 1e6)), 1_000_000n)

/** The voltages (V, against the last place) of a network with draws of constant current that is one island: all places but the last in one dense
 * system of Kirchhoff's current laws, solved by Gauss in fractions. Nothing here is like the kernel. */
export function exactVoltages({ links, sources, draws }: DcNetwork): ReadonlyMap<string, Ratio> {
  const places = [
    ...new Set([
      ...links.flatMap(({ ends }) => ends),
      ...sources.flatMap(({ negative, positive }) => [negative, positive]),
    ]),
  ]
  const size = places.length - 1
  const rows: Ratio[][] = Array.from({ length: size }, () => new Array<Ratio>(size + 1).fill(zero))
  const add = (row: number, column: number, value: Ratio) => {
    const of = rows[row]
    if (of && column <= size && row < size) of[column] = plus(of[column] ?? zero, value)
  }
  const conduct = (a: number, b: number, conductance: Ratio) => {
    for (const [row, other] of [
      [a, b],
      [b, a],
    ] as const) {
      if (row < size) add(row, row, conductance)
      if (other < size) add(row, other, times(ratio(-1n), conductance))
    }
  }
  const feed = (to: number, amps: Ratio) => add(to, size, amps)
  for (const { ends, resistance } of links) {
    const [a, b] = ends.map((end) => places.indexOf(end)) as [number, number]
    if (a !== b) conduct(a, b, by(ratio(1n), micro(resistance)))
  }
  for (const { negative, positive, emf, resistance } of sources) {
    const [a, b] = [places.indexOf(negative), places.indexOf(positive)]
    if (a === b) continue
    const conductance = by(ratio(1n), micro(resistance))
    conduct(a, b, conductance)
    feed(b, times(micro(emf), conductance))
    feed(a, times(micro(-emf), conductance))
  }
  for (const { negative, positive, current = 0 } of draws) {
    feed(places.indexOf(positive), micro(-current))
    feed(places.indexOf(negative), micro(current))
  }
  for (let k = 0; k < size; k++) {
    const pivot = rows.findIndex((row, i) => i >= k && !isZero(row[k] ?? zero))
    const row = rows[pivot]
    if (!row) throw new Error('the places hang together by resistances')
    rows[pivot] = rows[k] ?? []
    rows[k] = row
    const scale = row[k] ?? zero
    for (let j = k; j <= size; j++) row[j] = by(row[j] ?? zero, scale)
    for (const [i, other] of rows.entries()) {
      const factor = other[k] ?? zero
      if (i === k || isZero(factor)) continue
      for (let j = k; j <= size; j++) other[j] = less(other[j] ?? zero, times(factor, row[j] ?? zero))
    }
  }
  return new Map(places.map((place, i) => [place, rows[i]?.[size] ?? zero]))
}

/** The current in a link, A, exact. */
export const exactCurrent = (
  voltages: ReadonlyMap<string, Ratio>,
  { ends: [a, b], resistance }: NetworkLink,
) => double(by(less(voltages.get(a) ?? zero, voltages.get(b) ?? zero), micro(resistance)))

/** The current out of a source, A, exact. */
export const exactSourceCurrent = (
  voltages: ReadonlyMap<string, Ratio>,
  { negative, positive, emf, resistance }: NetworkSource,
) =>
  double(
    by(
      plus(micro(emf), less(voltages.get(negative) ?? zero, voltages.get(positive) ?? zero)),
      micro(resistance),
    ),
  )

/** The voltage from one place to another, V, exact. */
export const exactVoltage = (voltages: ReadonlyMap<string, Ratio>, a: string, b: string) =>
  double(less(voltages.get(a) ?? zero, voltages.get(b) ?? zero))
