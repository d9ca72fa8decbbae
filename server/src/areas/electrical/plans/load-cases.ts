import type { Block } from '../../../job/model.ts'
import { greatest, least } from '../../../quantity/extremes.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { ok } from '../../common/outcome.ts'
import { bankShortCircuit } from './bank-fault.ts'
import { highestOfBank } from './banks-around.ts'
import { outcomeOf } from './cable-outcome.ts'
import { type Island, topologyOfFile } from './dc-topology.ts'
import { amperesOf, peakDraw, ratedDraw } from './draws.ts'
import { driveOf } from './drive-of.ts'
import { notAllKnown } from './load-flow.ts'
import { type Shared, sharedLoad } from './shared-load.ts'
import { type Sink, sinksOf, sourcesOf, wiresOf } from './supplied-network.ts'

/** What is on at the same time: everything at rated power; one drive at rated power, with the loads that belong to none; everything, but one battery off
 * where the others may give enough; everything, with the motors at peak torque; or nothing but what charges. */
export const caseKinds = ['rated', 'alone', 'off', 'peak', 'charging'] as const
export type CaseKind = (typeof caseKinds)[number]

/** What the solved network says of a part in one case. */
export interface CaseFlow {
  readonly kind: CaseKind
  /** As a person calls it: `only port at rated power`. */
  readonly name: string
  /** How long it lasts, s; undefined where it goes on, or is not known. */
  readonly lasts?: number
  /** In a conductor or device; out of a battery, negative while charging. A. */
  readonly amps?: number
  /** At a part that takes something, V. */
  readonly volts?: number
  /** What part of the power can be supplied at most, of a part that asks for more. */
  readonly share?: number
  readonly isPartly: boolean
  /** Batteries side by side of which one does not state its resistance: cables alone share the load. */
  readonly isSharedByCables: boolean
}

/** What it rests on, in words. */
export const flowAssumptions = ({ isPartly, isSharedByCables }: CaseFlow): readonly string[] => [
  ...(isPartly ? [notAllKnown] : []),
  ...(isSharedByCables
    ? [
        'batteries side by side share the load as their cables let them: not each states its internal resistance',
      ]
    : []),
]

/** Above so many drives or batteries on one network none is looked at alone, or off. Each costs a solution. */
const mostTried = 4

type Case = Pick<CaseFlow, 'kind' | 'name' | 'lasts'> & {
  readonly sinks: readonly Sink[]
  readonly isPartly: boolean
  readonly off?: BlockId
}

type Flows = ReadonlyMap<BlockId, readonly CaseFlow[]>

/** By batteries, conductors, devices and the parts that they feed. */
const flowsIn = (kind: CaseKind) =>
  function loadCases(file: FileLookup): Flows {
    const flows = new Map<BlockId, readonly CaseFlow[]>()
    for (const island of new Set(file.ofFile(topologyOfFile).islands.values())) {
      const found = outcomeOf(() => ok(flowsOf(kind, island, file)))
      for (const [part, flow] of found.ok ? found.value : [])
        flows.set(part, [...(flows.get(part) ?? []), flow])
    }
    return flows
  }

const byKind = {
  rated: flowsIn('rated'),
  alone: flowsIn('alone'),
  off: flowsIn('off'),
  peak: flowsIn('peak'),
  charging: flowsIn('charging'),
}

const casesOf: Readonly<Record<CaseKind, (island: Island, file: FileLookup) => readonly Case[]>> = {
  rated: (island, file) => [
    { kind: 'rated', name: 'all at rated power', ...sinksOf(island, ratedDraw, file) },
  ],
  alone: (island, file) => {
    const { sinks, isPartly } = sinksOf(island, ratedDraw, file)
    const of = ({ part }: Sink) => driveOf(file.blockOf(part))
    const drives = [...new Set(sinks.flatMap((sink) => of(sink) ?? []))]
    if (drives.length < 2 || drives.length > mostTried) return []
    return drives.map((drive) => ({
      kind: 'alone',
      name: `only ${drive.name ?? 'the drive'} at rated power`,
      sinks: sinks.filter((sink) => [undefined, drive].includes(of(sink))),
      isPartly,
    }))
  },
  off: (island, file) => {
    const sources = sourcesOf(island, file)
    const volts = least(sources.flatMap(({ low }) => low ?? []))
    if (volts === undefined || sources.length < 2 || sources.length > mostTried) return []
    const rated = sinksOf(island, ratedDraw, file)
    const needed = rated.sinks.reduce((sum, { draw }) => sum + amperesOf(draw, volts), 0)
    const giving = (some: typeof sources) => some.reduce((sum, { most }) => sum + most, 0)
    return sources
      .filter((off) => giving(sources.filter((one) => one !== off)) >= needed)
      .map(({ part }) => ({
        kind: 'off',
        name: `all at rated power, ${file.blockOf(part).name ?? 'a battery'} off`,
        off: part,
        ...rated,
      }))
  },
  peak: (island, file) => {
    const peaks = sinksOf(island, peakDraw, file).sinks
    if (peaks.length === 0) return []
    const { sinks, isPartly } = sinksOf(
      island,
      (part, lookup) => peakDraw(part, lookup) ?? ratedDraw(part, lookup),
      file,
    )
    const lasting = peaks.map(({ draw }) => draw.lasts)
    const lasts = lasting.includes(undefined) ? undefined : greatest(lasting.flatMap((time) => time ?? []))
    return [
      { kind: 'peak', name: 'motors at peak torque', ...(lasts !== undefined && { lasts }), sinks, isPartly },
    ]
  },
  charging: ({ batteries, feeders }) =>
    batteries.length === 0 || feeders.length === 0
      ? []
      : [
          {
            kind: 'charging',
            name: 'charging, nothing else on',
            sinks: feeders.map(({ feeder, place, current }) => ({
              part: feeder,
              place,
              draw: { power: 0, current: -current },
            })),
            isPartly: feeders.some(({ current }) => current === 0),
          },
        ],
}

/** What is left of two currents that cancel each other, A. */
const noCurrent = 1e-3
const orNone = (amps: number): number => (Math.abs(amps) < noCurrent ? 0 : amps)

/** With their resistance: that of the highest short-circuit current. */
const sharing = (island: Island, file: FileLookup): readonly Shared[] =>
  sourcesOf(island, file).map((source) => {
    const block = file.blockOf(source.part)
    const lookup = file.from(block)
    const amps = block.kind === 'battery' ? bankShortCircuit(block, lookup)?.highest : undefined
    const volts = block.kind === 'battery' ? highestOfBank(block, lookup) : undefined
    return { ...source, resistance: amps === undefined || volts === undefined ? undefined : volts / amps }
  })

function flowsOf(
  kind: CaseKind,
  island: Island,
  file: FileLookup,
): readonly (readonly [BlockId, CaseFlow])[] {
  const sources = sharing(island, file)
  const volts = least(sources.flatMap(({ low }) => low ?? []))
  if (volts === undefined) return []
  const { wires, isPartly } = wiresOf(island, file)
  const isSharedByCables = sources.length > 1 && sources.some(({ resistance }) => resistance === undefined)
  return casesOf[kind](island, file).flatMap(({ sinks, off, ...one }) => {
    const on = sources.filter(({ part }) => part !== off)
    const { given, reached, through, beyond } = sharedLoad(on, volts, wires, sinks)
    const said = { ...one, isPartly: isPartly || one.isPartly, isSharedByCables }
    const amperes = (i: number) => Math.abs((wires[i] && through.get(wires[i])) ?? 0)
    const isSolved = beyond.size === 0
    const cables = [...island.of].map(([cable, pieces]) => [cable, greatest(pieces.map(amperes))] as const)
    const devices = island.devices.map(
      ({ device }, i) => [device, amperes(island.conductors.length + i)] as const,
    )
    const taking = kind === 'charging' ? [] : sinks
    return [
      ...(isSolved ? [...cables, ...devices, ...given] : []).flatMap(
        ([part, amps]): readonly (readonly [BlockId, CaseFlow])[] =>
          amps === undefined ? [] : [[part, { ...said, amps: orNone(amps) }]],
      ),
      ...taking.flatMap(({ part }): readonly (readonly [BlockId, CaseFlow])[] => {
        const [at, share] = [reached.get(part), beyond.get(part)]
        if (at === undefined && share === undefined) return []
        return [
          [part, { ...said, ...(at !== undefined && { volts: at }), ...(share !== undefined && { share }) }],
        ]
      }),
    ]
  })
}

const flowsWhere = (kind: CaseKind) =>
  plan((part: Block, { ofFile }: Lookup): readonly CaseFlow[] => ofFile(byKind[kind]).get(idOf(part)) ?? [])

const flowsAt = {
  rated: flowsWhere('rated'),
  alone: flowsWhere('alone'),
  off: flowsWhere('off'),
  peak: flowsWhere('peak'),
  charging: flowsWhere('charging'),
}

/** What a part has in the cases of one kind; none where nothing leads to it, or no voltage is known. */
export const caseFlows = (kind: CaseKind, part: Block, lookup: Lookup): readonly CaseFlow[] =>
  flowsAt[kind](part, lookup)

/** In all cases. */
export const allCaseFlows = (part: Block, lookup: Lookup): readonly CaseFlow[] =>
  caseKinds.flatMap((kind) => caseFlows(kind, part, lookup))
