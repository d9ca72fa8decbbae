import { LuDecomposition, Matrix } from 'ml-matrix'
import type { DcNetwork } from '../../../server/src/engineering/electrical/dc-network.ts'

/** The voltages of all draws of constant power (V) by a dense conductance matrix, from the voltages with no load on: each time the currents that the
 * powers mean at the voltages before. Where all loads are one way round these only fall, and never pass the solution; so if one turns negative there
 * is none. Undefined then. */
export function denseVoltages({ links, sources, draws }: DcNetwork): readonly number[] | undefined {
  const places = [
    ...new Set([
      ...sources.flatMap(({ negative, positive }) => [negative, positive]),
      ...links.flatMap(({ ends }) => ends),
    ]),
  ]
  const size = places.length
  const conductances = Matrix.zeros(size, size)
  const fed = new Array<number>(size).fill(0)
  const add = (a: number, b: number, value: number) => conductances.set(a, b, conductances.get(a, b) + value)
  const feed = (place: number, amps: number) => {
    fed[place] = (fed[place] ?? 0) + amps
  }
  for (const { ends, resistance } of [
    ...links,
    ...sources.map(({ negative, positive, resistance: ohm }) => ({
      ends: [negative, positive],
      resistance: ohm,
    })),
  ]) {
    const [a, b] = ends.map((end) => places.indexOf(end)) as [number, number]
    add(a, a, 1 / resistance)
    add(b, b, 1 / resistance)
    add(a, b, -1 / resistance)
    add(b, a, -1 / resistance)
  }
  for (const { negative, positive, emf, resistance } of sources) {
    feed(places.indexOf(positive), emf / resistance)
    feed(places.indexOf(negative), -emf / resistance)
  }
  // The first place is at 0 V.
  for (let i = 0; i < size; i++) {
    conductances.set(0, i, i === 0 ? 1 : 0)
    conductances.set(i, 0, i === 0 ? 1 : 0)
  }
  const solver = new LuDecomposition(conductances)
  let currents = draws.map(() => 0)
  for (let before: readonly number[] = []; ; ) {
    const all = [...fed]
    for (const [i, { negative, positive }] of draws.entries()) {
      const [from, to] = [places.indexOf(positive), places.indexOf(negative)]
      all[from] = (all[from] ?? 0) - (currents[i] ?? 0)
      all[to] = (all[to] ?? 0) + (currents[i] ?? 0)
    }
    all[0] = 0
    const voltages = solver.solve(Matrix.columnVector(all)).to1DArray()
    const at = (place: string) => voltages[places.indexOf(place)] ?? Number.NaN
    const now = draws.map(({ negative, positive }) => at(positive) - at(negative))
    if (now.some((volts) => volts <= 0)) return undefined
    if (now.every((volts, i) => Math.abs(volts - (before[i] ?? 0)) < 1e-11 * volts)) return now
    before = now
    currents = draws.map(({ power = 0 }, i) => power / (now[i] ?? 1))
  }
}
