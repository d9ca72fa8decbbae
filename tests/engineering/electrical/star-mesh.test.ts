// Networks of conductances: the star-mesh transform against textbook cases and a dense matrix, its signs against eigenvalues.
import fc from 'fast-check'
import { EigenvalueDecomposition, LuDecomposition, Matrix } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import {
  branchCurrent,
  openIsland,
  operatingPoint,
  portCurrent,
  seenFrom,
  voltageBetween,
} from '../../../server/src/engineering/electrical/dc-island.ts'
import { wiringOf } from '../../../server/src/engineering/electrical/dc-wiring.ts'
import { eliminationOf, reduce, voltagesOf } from '../../../server/src/engineering/electrical/star-mesh.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'
import { near, relative } from './network-helpers.ts'
import { exactly } from './outside.ts'

type Edge = readonly [number, number]

/** A tree over so many nodes and some more edges, with conductances. */
const anyMesh = (conductance: fc.Arbitrary<number>) =>
  fc.integer({ min: 2, max: 9 }).chain((nodes) =>
    fc
      .record({
        tree: fc.tuple(...Array.from({ length: nodes - 1 }, (_, i) => fc.nat({ max: i }))),
        more: fc.array(fc.tuple(fc.nat({ max: nodes - 1 }), fc.nat({ max: nodes - 1 })), { maxLength: 8 }),
        values: fc.array(conductance, { minLength: nodes + 8, maxLength: nodes + 8 }),
      })
      .map(({ tree, more, values }) => {
        const edges: Edge[] = [
          ...tree.map((before, i): Edge => [before, i + 1]),
          ...more.filter(([a, b]) => a !== b),
        ]
        return { nodes, edges, values: values.slice(0, edges.length) }
      }),
  )

/** The conductance matrix, the last node left out. */
function matrixOf({
  nodes,
  edges,
  values,
}: {
  nodes: number
  edges: readonly Edge[]
  values: readonly number[]
}) {
  const all = Matrix.zeros(nodes, nodes)
  const add = (a: number, b: number, value: number) => all.set(a, b, all.get(a, b) + value)
  for (const [i, [a, b]] of edges.entries()) {
    const value = values[i] ?? 0
    add(a, a, value)
    add(b, b, value)
    add(a, b, -value)
    add(b, a, -value)
  }
  return all.subMatrix(0, nodes - 2, 0, nodes - 2)
}

describe('nodes taken out one by one', () => {
  it('a star of 30, 20 and 50 S is a mesh of 6, 15 and 10 S (star-delta transform)', () => {
    // 30·20/100, 30·50/100, 20·50/100: fed with 1 A from end to end, in two ways of seeing the same.
    const star = reduce(
      eliminationOf(4, [
        [0, 3],
        [1, 3],
        [2, 3],
      ]),
      [30, 20, 50],
    )
    const mesh = reduce(
      eliminationOf(3, [
        [0, 1],
        [0, 2],
        [1, 2],
      ]),
      [6, 15, 10],
    )
    if (!(star && mesh)) throw new Error('all conductances are above zero')
    for (const fed of [
      [1, -1, 0],
      [0, 1, -1],
      [1, 0, -1],
    ]) {
      const [a, b] = [voltagesOf(star, [...fed, 0]), voltagesOf(mesh, fed)]
      for (const [i, j] of [
        [0, 1],
        [1, 2],
      ] as const)
        near((a[i] ?? 0) - (a[j] ?? 0), (b[i] ?? 0) - (b[j] ?? 0), 1e-15)
    }
  })

  it('trees and chains make no new edges', () => {
    const chain = Array.from({ length: 99 }, (_, i): Edge => [i, i + 1])
    expect(eliminationOf(100, chain).slots).toBe(99)
    const star = Array.from({ length: 99 }, (_, i): Edge => [0, i + 1])
    expect(eliminationOf(100, star).slots).toBe(99)
  })

  it('gives the voltages of a dense matrix', () => {
    fc.assert(
      fc.property(
        anyMesh(fc.double({ min: 0.1, max: 10, noNaN: true })),
        fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 9, maxLength: 9 }),
        (mesh, currents) => {
          const reduced = reduce(eliminationOf(mesh.nodes, mesh.edges), mesh.values)
          if (!reduced) throw new Error('all conductances are above zero')
          const fed = currents.slice(0, mesh.nodes - 1)
          const dense = new LuDecomposition(matrixOf(mesh)).solve(Matrix.columnVector(fed)).to1DArray()
          const found = voltagesOf(reduced, [...fed, -fed.reduce((sum, one) => sum + one, 0)])
          for (const [i, volts] of dense.entries()) near((found[i] ?? 0) - (found.at(-1) ?? 0), volts, 1e-9)
        },
      ),
    )
  })

  it('ends where the matrix has an eigenvalue that is not above zero, negative conductances among them', () => {
    fc.assert(
      fc.property(
        anyMesh(fc.double({ min: 0.1, max: 10, noNaN: true })),
        fc.double({ min: -20, max: -0.1, noNaN: true }),
        (mesh, negative) => {
          const edges: Edge[] = [...mesh.edges, [0, mesh.nodes - 1]]
          const all = { nodes: mesh.nodes, edges, values: [...mesh.values, negative] }
          const least = Math.min(
            ...new EigenvalueDecomposition(matrixOf(all), { assumeSymmetric: true }).realEigenvalues,
          )
          fc.pre(Math.abs(least) > 1e-9)
          expect(reduce(eliminationOf(all.nodes, edges), all.values) !== undefined).toBe(least > 0)
        },
      ),
    )
  })

  it('refuses an edge to a node that is not there', () => {
    expect(() => eliminationOf(2, [[0, 2]])).toThrow(OutOfRange)
    expect(() => eliminationOf(2, [[0.5, 1]])).toThrow(OutOfRange)
  })
})

describe('an island', () => {
  const battery = { from: 0, to: 1, conductance: 200, emf: 12 }
  const cable = { from: 1, to: 2, conductance: 50, emf: 0 }
  const open = openIsland({ nodes: 3, branches: [battery, cable] })

  it('has the voltage of its source with no load, and its resistances in a row from its end', () => {
    expect(voltageBetween(open.voltages, { from: 2, to: 0 })).toBe(12)
    const seen = seenFrom(open, { from: 2, to: 0 })
    exactly(seen.voltage, 12)
    exactly(seen.resistance, 1 / 200 + 1 / 50)
    expect(branchCurrent(open.voltages, cable)).toBe(0)
    expect(() => openIsland({ nodes: 2, branches: [{ ...battery, conductance: 0 }] })).toThrow(OutOfRange)
  })

  it('supplies a load at the upper of two voltages', () => {
    const port = { from: 2, to: 0, power: 500, current: 4 }
    const point = operatingPoint(open, [port])
    if (!point.stable) throw new Error('500 W can be supplied')
    const volts = voltageBetween(point.voltages, port)
    // V = 12 − 0.025 (500/V + 4)
    exactly(volts, (11.9 + Math.sqrt(11.9 ** 2 - 4 * 0.025 * 500)) / 2)
    exactly(portCurrent(port, volts), 500 / volts + 4)
    expect(portCurrent({ ...port, power: 0 }, 0)).toBe(4)
  })

  it('of a battery with a middle: a load on one half lifts the other; both are found', () => {
    // Two halves of 50 V, 0.1 Ω each, and 0.05 Ω in the middle lead. A load of the upper half raises the middle.
    const halves = openIsland({
      nodes: 4,
      branches: [
        { from: 0, to: 1, conductance: 10, emf: 50 },
        { from: 1, to: 2, conductance: 10, emf: 50 },
        { from: 1, to: 3, conductance: 20, emf: 0 },
      ],
    })
    const [upper, lower] = [
      { from: 2, to: 3, power: 2000, current: 0 },
      { from: 3, to: 0, power: 500, current: 0 },
    ]
    const point = operatingPoint(halves, [upper, lower])
    if (!point.stable) throw new Error('both can be supplied')
    const [u, l] = [voltageBetween(point.voltages, upper), voltageBetween(point.voltages, lower)]
    const [iu, il] = [2000 / u, 500 / l]
    relative(u, 50 - 0.1 * iu - 0.05 * (iu - il), 1e-9)
    relative(l, 50 - 0.1 * il + 0.05 * (iu - il), 1e-9)
    expect(l).toBeGreaterThan(49)
    // 50² / (4 · 0.15 Ω) = 4167 W for the upper half alone.
    const alone = operatingPoint(halves, [{ ...upper, power: 5000 }])
    expect(alone).toMatchObject({ stable: false, ports: [0] })
    if (!alone.stable) near(alone.share, 2500 / 0.6 / 5000, 2e-4)
  })
})

describe('what hangs together', () => {
  it('places that 0 Ω joins are one node, islands are apart, a place with nothing is nowhere', () => {
    const wire = (a: string, b: string, resistance: number) => ({ ends: [a, b] as const, resistance, emf: 0 })
    const wiring = wiringOf(
      [wire('a', 'b', 1), wire('b', 'c', 0), wire('c', 'a', 2), wire('x', 'y', 1), wire('p', 'q', 0)],
      ['lonely'],
    )
    expect(wiring.islands.map(({ nodes }) => nodes)).toEqual([2, 2])
    expect(wiring.at('b')).toEqual(wiring.at('c'))
    expect(wiring.at('a')?.island).not.toBe(wiring.at('x')?.island)
    for (const place of ['lonely', 'unknown', 'p']) expect(wiring.at(place)).toBeUndefined()
    expect([...wiring.places.keys()]).toEqual(['a', 'b', 'c', 'x', 'y', 'p', 'q', 'lonely'])
    expect(wiring.joint[wiring.places.get('q') ?? -1]).toBe(wiring.places.get('p'))
  })
})
