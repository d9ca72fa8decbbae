import { identityOf } from '../../../job/identity.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { formatSi } from '../../../quantity/format.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { lookupFrom } from '../../../store/store.ts'
import { harmless } from '../../../syntax/harmless.ts'
import { formatCarried, formatLoad } from '../../common/amperes.ts'
import { type AreaCommand, CannotRun } from '../../common/command.ts'
import { cableAmpacity } from '../plans/cable-ampacity.ts'
import { heatAround } from '../plans/fuse-ambient.ts'
import { allCaseFlows, type CaseFlow, flowAssumptions } from '../plans/load-cases.ts'
import { type OneLinePart, oneLines } from '../plans/one-line.ts'
import { ratedFor } from '../plans/through-current.ts'
import { type NetworkJson, networkSchema } from './network-schema.ts'

const solved = 'nodal analysis (Kirchhoff), the network solved with constant powers'

/** What a part can carry, or is rated for, A. */
function carriesOf(part: Block, lookup: Lookup): number | undefined {
  if (part.kind === 'cable') {
    const ampacity = cableAmpacity(part, lookup)
    return ampacity.ok ? ampacity.value.carries : undefined
  }
  if (part.kind === 'protection') {
    const rating = factOf(part, 'protection.rating')?.value
    return rating === undefined ? undefined : rating * heatAround(part).share
  }
  return part.kind === 'battery' ? factOf(part, 'battery.current')?.value : ratedFor(part, 'current')?.value
}

/** What the job says of each kind of part, in a few words. */
const told = {
  battery: [['battery.nominal', 'voltage']],
  cable: [['cable.conductor', 'area']],
  protection: [['protection.rating', 'current']],
  charger: [['charger.current', 'current']],
  converter: [['converter.current', 'current']],
  load: [
    ['load.power', 'power'],
    ['load.current', 'current'],
  ],
} as const

const isTold = (kind: string): kind is keyof typeof told => kind in told

/** `95 mm2, 2 m`. */
function dataOf(part: Block, length: number | undefined, { system }: Lookup): string {
  const facts = isTold(part.kind) ? told[part.kind] : []
  const words = facts.flatMap(([fact, kind]) => {
    const value = factOf(part, fact)?.value
    return value === undefined ? [] : [formatSi(value, kind, system, 4)]
  })
  return [...words, ...(length === undefined ? [] : [formatSi(length, 'length', system, 3)])].join(', ')
}

interface Row extends OneLinePart {
  readonly block: Block
  readonly depth: number
  readonly carries: number | undefined
  readonly flows: readonly CaseFlow[]
}

function rowsOf(parts: readonly OneLinePart[], lookup: Lookup): readonly Row[] {
  const rows: Row[] = []
  for (const part of parts) {
    const block = lookup.blockOf(part.part)
    const from = lookup.from(block)
    const before = part.before === undefined ? undefined : rows[part.before]
    rows.push({
      ...part,
      block,
      depth: before ? before.depth + 1 : 0,
      carries: carriesOf(block, from),
      flows: allCaseFlows(block, from),
    })
  }
  return rows
}

const called = ({ kind, path }: Block): string => path || kind

/** A, or V of what takes power, in a case. */
function cellOf({ flows, block }: Row, name: string): string {
  const flow = flows.find((one) => one.name === name)
  if (flow?.volts !== undefined) return formatSi(flow.volts, 'voltage', 'metric', 3)
  if (flow?.amps === undefined) return ''
  return block.kind === 'battery' && flow.amps < 0 ? `-${formatLoad(-flow.amps)}` : formatLoad(flow.amps)
}

const letterOf = (i: number): string => 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'.charAt(i) || `${i + 1}`

function tableOf(rows: readonly Row[], cases: readonly string[], lookup: Lookup): readonly string[] {
  const cells = rows.map((row) => [
    `${'  '.repeat(row.depth)}${called(row.block)} (${row.block.kind})`,
    dataOf(row.block, row.length, lookup),
    row.carries === undefined ? '' : formatCarried(row.carries),
    ...cases.map((name) => cellOf(row, name)),
    row.closesAt === undefined ? '' : `ends at ${called(rows[row.closesAt]?.block ?? row.block)} again`,
  ])
  const all = [['Part', 'As written', 'Carries', ...cases.map((_, i) => letterOf(i)), ''], ...cells]
  const widths = (all[0] ?? []).map((_, column) => Math.max(...all.map((row) => row[column]?.length ?? 0)))
  return all.map((row) =>
    row
      .map((cell, i) => (i < 2 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0)))
      .join('  ')
      .trimEnd(),
  )
}

/** To six digits: no more is meant. */
const rounded = (value: number | undefined): number | null =>
  value === undefined ? null : Number(value.toPrecision(6))

function partJson(row: Row, cases: readonly string[]): NetworkJson['networks'][number]['parts'][number] {
  return {
    block: called(row.block),
    kind: row.block.kind,
    before: row.before ?? null,
    closesAt: row.closesAt ?? null,
    length_m: rounded(row.length),
    carries_A: rounded(row.carries),
    cases: row.flows.map(({ name, amps, volts }) => ({
      case: cases.indexOf(name),
      current_A: rounded(amps),
      voltage_V: rounded(volts),
    })),
  }
}

/** `network`: the DC networks of a job, from each battery on, with what the solved network says of each part. Ends with 1 where there is none. */
export const network: AreaCommand<typeof networkSchema> = {
  name: 'network',
  description: 'Show the DC network with its currents and voltages.',
  options: [],
  schema: networkSchema,
  run({ head, analysis, file }) {
    const blocks = analysis.blocks(file)
    const [start] = blocks
    if (!start) throw new CannotRun('The job has no blocks.')
    const lookup = lookupFrom(start, { analysis, file })
    const networks = lookup.ofFile(oneLines).map((parts) => rowsOf(parts, lookup))
    const flows = networks.flatMap((rows) => rows.flatMap((row) => row.flows))
    const cases = [...new Set(flows.map(({ name }) => name))]
    const assumptions = [...new Set(flows.flatMap(flowAssumptions))]
    const title = identityOf(blocks)?.title
    const heading = `${title === undefined ? '' : `${harmless(title)}, `}${harmless(head.file)}, ${head.date}`
    const tables = networks.flatMap((rows) => ['', ...tableOf(rows, cases, lookup)])
    const text = [
      heading,
      ...(networks.length > 0 ? tables : ['', 'No network: no cable leads from a battery or converter.']),
      ...(cases.length > 0 ? ['', ...cases.map((name, i) => `${letterOf(i)}: ${name}`)] : []),
      ...(assumptions.length > 0 ? ['', 'Assumed:', ...assumptions.map((words) => `- ${words}`)] : []),
      ...(networks.length > 0 ? ['', `Source: ${solved}.`] : []),
    ]
    const json: NetworkJson = {
      version: 1,
      ...head,
      cases,
      networks: networks.map((rows) => ({ parts: rows.map((row) => partJson(row, cases)) })),
      assumptions,
      source: [solved],
    }
    return { text: text.map(harmless).join('\n'), json, exitCode: networks.length > 0 ? 0 : 1 }
  },
}
