// Runs the networks beside this file in ngspice (39.3 was used), where it is installed, and prints how far off the kernel is. --keep writes the figures
// that the unit tests compare with.
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import {
  type DcNetwork,
  faultFlow,
  solveNetwork,
} from '../../../../server/src/engineering/electrical/dc-network.ts'
import type { Figures } from './figures.ts'
import { networks } from './networks.ts'

const { values } = parseArgs({ options: { keep: { type: 'boolean', default: false } } })

const folder = mkdtempSync(join(tmpdir(), 'shaftwright-ngspice-'))
process.on('exit', () => rmSync(folder, { recursive: true }))

/** A network as a circuit for ngspice. Loads of constant power are currents that follow from the voltage; below 0.4
 * of the voltage of the first source they stop growing: the first guess divides by no zero, and the lower of two solutions is not there. */
function netlist({ links, sources, draws }: DcNetwork): {
  readonly text: string
  readonly asked: readonly string[]
} {
  const names = new Map<string, string>([[sources[0]?.negative ?? '', '0']])
  const node = (place: string) => {
    const known = names.get(place) ?? `n${names.size}`
    names.set(place, known)
    return known
  }
  const first = sources[0]?.emf ?? 0
  const lines = [
    ...sources.flatMap(({ negative, positive, emf, resistance }, i) => [
      `V${i} s${i} ${node(negative)} ${emf}`,
      `RS${i} s${i} ${node(positive)} ${resistance}`,
    ]),
    // A source of 0 V measures the current.
    ...links.flatMap(({ ends: [a, b], resistance }, i) => [
      `VL${i} ${node(a)} l${i} 0`,
      ...(resistance === 0 ? [`VZ${i} l${i} ${node(b)} 0`] : [`RL${i} l${i} ${node(b)} ${resistance}`]),
    ]),
    ...draws.map(({ negative, positive, power = 0, current = 0 }, i) => {
      const [from, to] = [node(positive), node(negative)]
      const volts = to === '0' ? `V(${from})` : `V(${from},${to})`
      return `B${i} ${from} ${to} I=${power}/max(${volts},${0.4 * first})+${current}`
    }),
  ]
  const asked = [
    ...sources.map((_, i) => `-i(V${i})`),
    ...links.map((_, i) => `i(VL${i})`),
    ...draws.map(
      ({ negative, positive }) =>
        `v(${node(positive)})-${node(negative) === '0' ? '0' : `v(${node(negative)})`}`,
    ),
  ]
  const text = [
    'network',
    ...lines,
    // The first guess: every positive pole at the voltage of the first source.
    ...[...names].filter(([place]) => place.endsWith('+')).map(([, name]) => `.nodeset v(${name})=${first}`),
    '.options reltol=1e-12 abstol=1e-12 vntol=1e-12 gmin=1e-18 itl1=1000',
    '.control',
    'set numdgt=12',
    'op',
    ...asked.map((one) => `print ${one}`),
    'quit',
    '.endc',
    '.end',
    '',
  ].join('\n')
  return { text, asked }
}

function simulated(network: DcNetwork): {
  sourceCurrents: number[]
  linkCurrents: number[]
  drawVoltages: number[]
} {
  const { text, asked } = netlist(network)
  const file = join(folder, 'network.cir')
  writeFileSync(file, text)
  const { stdout, error } = spawnSync('ngspice', ['-b', file], { encoding: 'utf8' })
  if (error) throw new Error(`ngspice does not start: ${error.message}`)
  const figures = [...stdout.matchAll(/^\S.* = (-?[\d.]+e[+-]\d+)\s*$/gm)].map(([, figure]) => Number(figure))
  if (figures.length !== asked.length)
    throw new Error(`ngspice printed ${figures.length} figures:\n${stdout}`)
  const [s, l] = [network.sources.length, network.links.length]
  return {
    sourceCurrents: figures.slice(0, s),
    linkCurrents: figures.slice(s, s + l),
    drawVoltages: figures.slice(s + l),
  }
}

const offBy = (ours: readonly number[], theirs: readonly number[]): number => {
  const size = Math.max(...theirs.map(Math.abs))
  return Math.max(0, ...ours.map((value, i) => Math.abs(value - (theirs[i] ?? Number.NaN)) / size))
}

const kept: Record<string, Figures> = {}
console.log(
  '| network | draws, V | sources, A | at the fault, A | off by at most |\n| :-- | :-- | :-- | :-- | :-- |',
)
for (const [name, { network, fault }] of Object.entries(networks)) {
  const load = simulated(network)
  const shorted = simulated({
    sources: network.sources,
    links: [...network.links, { ends: fault, resistance: 0 }],
    draws: [],
  })
  const figures: Figures = {
    drawVoltages: load.drawVoltages,
    sourceCurrents: load.sourceCurrents,
    linkCurrents: load.linkCurrents,
    fault: {
      current: shorted.linkCurrents.at(-1) ?? Number.NaN,
      linkCurrents: shorted.linkCurrents.slice(0, -1),
      sourceCurrents: shorted.sourceCurrents,
    },
  }
  kept[name] = figures
  const ours = solveNetwork(network)
  if (ours.outcome !== 'solved') throw new Error(`no solution for ${name}`)
  const flow = faultFlow(network, fault)
  const off = Math.max(
    offBy(ours.drawVoltages, figures.drawVoltages),
    offBy(
      [...ours.sourceCurrents, ...ours.linkCurrents],
      [...figures.sourceCurrents, ...figures.linkCurrents],
    ),
    offBy([flow.current, ...flow.linkCurrents], [figures.fault.current, ...figures.fault.linkCurrents]),
  )
  const list = (of: readonly number[], digits: number) => of.map((one) => one.toFixed(digits)).join(', ')
  console.log(
    `| ${name} | ${list(figures.drawVoltages, 3)} | ${list(figures.sourceCurrents, 2)} | ${list([figures.fault.current], 1)} | ${off.toExponential(0)} |`,
  )
}
if (values.keep) writeFileSync(new URL('figures.json', import.meta.url), `${JSON.stringify(kept, null, 2)}\n`)
