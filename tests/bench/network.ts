// node tests/bench/network.ts: how long a network of 200 parts takes to solve, and the faults at each of its places. In a process of its own; the
// first time counts, for a job is often solved once.
import { performance } from 'node:perf_hooks'
import {
  type DcNetwork,
  faultCurrents,
  solveNetwork,
} from '../../server/src/engineering/electrical/dc-network.ts'
import { spreadOf } from './samples.ts'

/** Four banks on a bus, and branches of cables and devices in a row, each with two poles, until there are so many parts. */
function boat(parts: number, loads: number): DcNetwork {
  const places = Math.floor((parts - 4 - loads) / loads)
  const banks = [0, 1, 2, 3].map((i) => `bank ${i}`)
  const link = (from: string, to: string, resistance: number) => [
    { ends: [`${from} +`, `${to} +`] as const, resistance },
    { ends: [`${from} -`, `${to} -`] as const, resistance },
  ]
  const branches = Array.from({ length: loads }, (_, load) => [
    'bus',
    ...Array.from({ length: places }, (__, i) => `${load} ${i}`),
  ])
  return {
    sources: banks.map((bank, i) => ({
      negative: `${bank} -`,
      positive: `${bank} +`,
      emf: 104 + i / 10,
      resistance: 0.016,
    })),
    links: [
      ...banks.flatMap((bank) => link(bank, 'bus', 3e-4)),
      // Each third one is a busbar or a stud: 0 Ω.
      ...branches.flatMap((branch) =>
        branch.slice(1).flatMap((place, i) => link(branch[i] ?? 'bus', place, i % 3 === 2 ? 0 : 2e-4)),
      ),
    ],
    draws: branches.map((branch) => ({
      negative: `${branch.at(-1)} -`,
      positive: `${branch.at(-1)} +`,
      power: 2e4 / loads,
    })),
  }
}

const timed = (times: number, work: () => unknown): number[] =>
  Array.from({ length: times }, () => {
    const start = performance.now()
    work()
    return performance.now() - start
  })

const ms = (value: number): string => `${value.toFixed(2)} ms`
console.log('| network | first | p50 | p95 | faults at all places, p50 |\n| :-- | --: | --: | --: | --: |')
for (const [parts, loads] of [
  [200, 10],
  [200, 40],
  [400, 20],
] as const) {
  const network = boat(parts, loads)
  const places = [...new Set(network.links.flatMap(({ ends }) => ends.map((end) => end.slice(0, -2))))]
  const [first = 0, ...rest] = timed(101, () => solveNetwork(network))
  const pairs = places.map((place) => [`${place} +`, `${place} -`] as const)
  const faults = spreadOf(timed(20, () => faultCurrents(network, pairs)))
  const { p50, p95 } = spreadOf(rest)
  console.log(
    `| ${parts} parts, ${loads} of them loads | ${ms(first)} | ${ms(p50)} | ${ms(p95)} | ${ms(faults.p50)} |`,
  )
}
