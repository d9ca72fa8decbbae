import type { DriveState } from '../../../engineering/propulsion/power-table.ts'
import { identityOf } from '../../../job/identity.ts'
import type { Block } from '../../../job/model.ts'
import { inUnit } from '../../../quantity/format.ts'
import { findUnit } from '../../../quantity/units.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { lookupFrom } from '../../../store/store.ts'
import { harmless } from '../../../syntax/harmless.ts'
import { type AreaCommand, CannotRun } from '../../common/command.ts'
import type { Outcome } from '../../common/outcome.ts'
import { type Energy, energyOfFile } from '../plans/energy.ts'
import { bollardOf, type Power, powerOfFile } from '../plans/power.ts'
import { type DriveOnCurve, type PointOnCurve, powerCurveOfFile } from '../plans/power-curve.ts'
import { heads, powerRows, topWords } from '../power-rows.ts'
import { balance, energyBalance } from '../sources.ts'
import { type PowerJson, powerSchema } from './power-schema.ts'

/** In a unit by its name, to six digits: no more is meant. */
function inUnitNamed(si: number, name: string): number {
  const unit = findUnit(name)
  return Number((unit ? inUnit(si, unit) : si).toPrecision(6))
}

const driveJson = (drive: string, state: DriveState) => ({
  drive,
  propellerSpeed_rpm: inUnitNamed(state.speed, 'rpm'),
  motorSpeed_rpm: inUnitNamed(state.motorSpeed, 'rpm'),
  thrust_N: inUnitNamed(state.thrust, 'N'),
  motorTorque_Nm: inUnitNamed(state.motorTorque, 'N·m'),
  motorPower_kW: inUnitNamed(state.motorPower, 'kW'),
  propellerTorque_Nm: inUnitNamed(state.torque, 'N·m'),
  deliveredPower_kW: inUnitNamed(state.power, 'kW'),
})

const share = (value: number): number => Number(value.toPrecision(6))

const torqueLimit = (si: number | undefined): number | null =>
  si === undefined ? null : inUnitNamed(si, 'N·m')

function bollardJson(drives: readonly Block[], lookup: Lookup): PowerJson['bollard'] {
  return drives.map((drive) => {
    const outcome = bollardOf(drive, lookup.from(drive))
    const name = drive.name ?? ''
    if (!outcome.ok) return { drive: name, fault: outcome.fault.words }
    const { state } = outcome.value
    return { ...driveJson(name, state), fault: null, limitedBy: state.limitedBy }
  })
}

const driveRow = ({
  drive,
  state,
  motorLimit,
  limit,
  areaNeeded,
}: DriveOnCurve): PowerJson['rows'][number]['drives'][number] => ({
  ...driveJson(drive, state),
  efficiency: share(state.efficiency),
  slip: share(state.slip),
  advanceRatio: share(state.advance),
  motorTorqueLimit_Nm: torqueLimit(motorLimit),
  torqueLimit_Nm: torqueLimit(limit),
  bladeAreaNeeded: areaNeeded === undefined ? null : share(areaNeeded),
})

const rowJson = ({
  boatSpeed,
  point,
  resistance,
  effectivePower,
  drives,
  demand,
}: PointOnCurve): PowerJson['rows'][number] => ({
  boatSpeed_kn: inUnitNamed(boatSpeed, 'kn'),
  point: point ?? null,
  resistance_N: inUnitNamed(resistance, 'N'),
  effectivePower_kW: inUnitNamed(effectivePower, 'kW'),
  drives: drives.map(driveRow),
  batteryPower_kW: demand ? inUnitNamed(demand.power, 'kW') : null,
  cRate: demand ? share(demand.rate) : null,
  endurance_h: demand ? inUnitNamed(demand.endurance, 'h') : null,
  range_nmi: demand ? inUnitNamed(demand.range, 'nmi') : null,
})

function topJson({ table: { top } }: Power): PowerJson['topSpeed'] {
  if (!top) return null
  const { boatSpeed, bound = null, limitedBy = null } = top
  return {
    value_kn: inUnitNamed(boatSpeed, 'kn'),
    bound,
    limitedBy,
  }
}

/** A line for each speed and drive. */
function csvRows({ rows }: PowerJson): readonly (readonly (string | number)[])[] {
  const [first] = rows
  if (!first) return [['boatSpeed_kn']]
  const common = ({ drives: _, ...row }: PowerJson['rows'][number]) => row
  return [
    [...Object.keys(common(first)), ...Object.keys(first.drives[0] ?? {})],
    ...rows.flatMap((row) =>
      row.drives.map((drive) =>
        [...Object.values(common(row)), ...Object.values(drive)].map((cell) => cell ?? ''),
      ),
    ),
  ]
}

function textOf(power: Outcome<Power>, energy: Outcome<Energy>, { system }: Lookup): readonly string[] {
  if (!power.ok) return [`No power table: ${power.fault.words}`]
  const rows = [heads, ...powerRows(power.value, energy.ok ? energy.value : undefined, system)]
  const widths = heads.map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)))
  const { assumptions } = energy.ok ? energy.value : power.value
  return [
    ...rows.map((row) =>
      row
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join('  ')
        .trimEnd(),
    ),
    '',
    topWords(power.value, system),
    ...(energy.ok ? [] : [`Endurance and range: ${energy.fault.words}`]),
    ...(assumptions.length > 0 ? ['', 'Assumed:', ...assumptions.map((words) => `- ${words}`)] : []),
  ]
}

/** `power`: the power table of the boat. Ends with 1 where there is none. */
export const power: AreaCommand<typeof powerSchema> = {
  name: 'power',
  description: 'Calculate power, endurance and range over the speed of the boat.',
  options: [],
  hasCsv: true,
  schema: powerSchema,
  run({ head, analysis, file }) {
    const blocks = analysis.blocks(file)
    const drives = blocks.filter(({ kind }) => kind === 'drive')
    const [start] = [...blocks.filter(({ kind }) => kind === 'hull'), ...drives]
    if (!start) throw new CannotRun('The job has neither a hull nor a drive.')
    const lookup = lookupFrom(start, { analysis, file })
    const [table, energy] = [lookup.ofFile(powerOfFile), lookup.ofFile(energyOfFile)]
    const curve = powerCurveOfFile(lookup)
    const known = energy.ok ? energy.value : undefined
    const json: PowerJson = {
      version: 1,
      ...head,
      fault: table.ok ? null : table.fault.words,
      energyFault: energy.ok ? null : energy.fault.words,
      topSpeed: table.ok ? topJson(table.value) : null,
      bollard: bollardJson(lookup.ofKind('drive'), lookup),
      rows: curve.ok ? curve.value.map(rowJson) : [],
      assumptions: [...(known ?? (table.ok ? table.value : { assumptions: [] })).assumptions],
      source: [balance.text, energyBalance.text],
    }
    const title = identityOf(blocks)?.title
    const heading = `${title === undefined ? '' : `${harmless(title)}, `}${harmless(head.file)}, ${head.date}`
    return {
      text: [heading, '', ...textOf(table, energy, lookup).map(harmless)].join('\n'),
      json,
      csv: csvRows(json),
      exitCode: table.ok ? 0 : 1,
    }
  },
}
