import { formatAboutIn, formatSi } from '../../quantity/format.ts'
import type { UnitSystem } from '../../quantity/kinds.ts'
import type { Demand, Energy } from './plans/energy.ts'
import type { Power } from './plans/power.ts'

const brief = (
  si: number,
  kind: 'speed' | 'force' | 'rotational speed' | 'power',
  system: UnitSystem,
): string => formatSi(si, kind, system, 3)

export const heads = [
  'boat speed',
  'resistance',
  'propeller',
  'motor',
  'motor power',
  'battery',
  'endurance',
  'range',
]

/** The power table as texts, a row for each speed, then the top speed. Of several drives the values of each, once where they are alike. */
export function powerRows(
  power: Power,
  energy: Energy | undefined,
  system: UnitSystem,
): readonly (readonly string[])[] {
  const { rows, asked } = power.table
  const demands = new Map<number, Demand>()
  for (const demand of [...(energy?.rows ?? []), ...(energy?.asked ?? [])])
    if (demand) demands.set(demand.boatSpeed, demand)
  const reachable = asked.flatMap((row) => (row && !isInTable(row.boatSpeed, rows) ? [row] : []))
  return [...rows, ...reachable]
    .toSorted((a, b) => a.boatSpeed - b.boatSpeed)
    .map(({ boatSpeed, resistance, drives }) => {
      const each = (of: (state: (typeof drives)[number]) => string): string =>
        [...new Set(drives.map(of))].join(', ')
      const demand = demands.get(boatSpeed)
      return [
        brief(boatSpeed, 'speed', system),
        brief(resistance, 'force', system),
        each(({ speed }) => brief(speed, 'rotational speed', system)),
        each(({ motorSpeed }) => brief(motorSpeed, 'rotational speed', system)),
        each(({ motorPower }) => brief(motorPower, 'power', system)),
        demand ? brief(demand.power, 'power', system) : '',
        demand ? formatAboutIn(demand.endurance, 'h') : '',
        demand ? formatAboutIn(demand.range, 'nmi') : '',
      ]
    })
}

const isInTable = (speed: number, rows: readonly { readonly boatSpeed: number }[]): boolean =>
  rows.some(({ boatSpeed }) => Math.abs(boatSpeed - speed) < 1e-6)

/** What keeps a motor from turning faster, in words. */
export const heldBy = {
  torque: 'the torque of the motor',
  speed: 'the highest speed of the motor',
  curve: 'the end of the torque curve of the motor',
} as const

/** `7.2 kn`, `at least 6 kn`. */
export function topWords({ table, noTop }: Power, system: UnitSystem): string {
  const { top } = table
  if (!top) return noTop ?? 'The resistance of the hull has no range of speeds.'
  const speed = brief(top.boatSpeed, 'speed', system)
  if (top.bound === 'at-least') return `Top speed: at least ${speed}, where the known resistance ends.`
  if (top.bound === 'less-than')
    return `Top speed: less than ${speed}, the lowest speed that the resistance is known for.`
  return `Top speed: ${speed}, held by ${heldBy[top.limitedBy ?? 'torque']}.`
}
