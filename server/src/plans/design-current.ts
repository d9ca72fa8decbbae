import { dcCurrent, inverterVoltage, lineCurrent } from '../engineering/electrical/current.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, factOf } from '../job/model.ts'
import { formatNumber } from '../quantity/format.ts'

export interface DesignCurrent {
  /** Continuous current, A. */
  readonly current: number
  readonly from: string
  /** Voltage the drop is held against, V; between two phases where there are three. */
  readonly volts?: number
  readonly powerFactor: number
  readonly assumptions: readonly string[]
}

/** Taken where the file is silent; each is said as an assumption. Common practice, no source. */
const usual = { motorEfficiency: 0.9, controllerEfficiency: 0.95, powerFactor: 0.9 }

/** The continuous current a cable is sized for: as it says, else from the motor at the low end of the battery window. */
export function designCurrent(
  cable: Block,
  system: 'dc' | 'three-phase',
  lookup: Lookup,
): DesignCurrent | undefined {
  const assumptions: string[] = []
  const or = (value: number | undefined, otherwise: number, what: string): number => {
    if (value === undefined)
      assumptions.push(`${what} ${formatNumber(otherwise, 3)}: the job file does not say it`)
    return value ?? otherwise
  }
  const motor = motorOf(cable, lookup)
  const battery = batteryOf(cable, lookup)
  const window = battery && factOf(battery, 'battery.window')?.value
  const nominal = battery && factOf(battery, 'battery.nominal')?.value
  const lowest = window?.low ?? nominal
  const stated = factOf(cable, 'cable.current')?.value
  const power = motor && factOf(motor, 'motor.power')?.value
  const efficiency = () =>
    or(motor && factOf(motor, 'motor.efficiency')?.value, usual.motorEfficiency, 'motor efficiency')
  const factor = () =>
    or(motor && factOf(motor, 'motor.power-factor')?.value, usual.powerFactor, 'power factor')
  const lowSaid = () => {
    if (window?.low === undefined)
      assumptions.push('the battery falls no lower than its nominal voltage: its window is not said')
  }

  if (system === 'dc') {
    const volts = lowest === undefined ? {} : { volts: lowest }
    if (stated !== undefined)
      return { current: stated, from: 'the current the cable states', ...volts, powerFactor: 1, assumptions }
    if (power === undefined || lowest === undefined) return undefined
    lowSaid()
    const controller = lookup.near('controller')
    const current = dcCurrent({
      shaftPower: power,
      lowestVoltage: lowest,
      motorEfficiency: efficiency(),
      inverterEfficiency: or(
        controller && factOf(controller, 'controller.efficiency')?.value,
        usual.controllerEfficiency,
        'controller efficiency',
      ),
    })
    const from = `${formatNumber(power / 1000, 4)} kW at the shaft of the motor, ${formatNumber(lowest, 4)} V at the low end of the battery`
    return { current, from, ...volts, powerFactor: 1, assumptions }
  }

  const rated = motor && factOf(motor, 'motor.voltage')?.value
  const estimate =
    rated === undefined && lowest !== undefined ? inverterVoltage({ dcVoltage: lowest }) : undefined
  const volts = rated ?? estimate?.volts
  const powerFactor = factor()
  if (stated !== undefined)
    return {
      current: stated,
      from: 'the current the cable states',
      ...(volts !== undefined && { volts }),
      powerFactor,
      assumptions,
    }
  if (power === undefined || volts === undefined) return undefined
  if (estimate) {
    lowSaid()
    assumptions.push(...estimate.assumptions)
  }
  const current = lineCurrent({
    shaftPower: power,
    lineVoltage: volts,
    powerFactor,
    efficiency: efficiency(),
  })
  const from = `${formatNumber(power / 1000, 4)} kW at the shaft of the motor, ${formatNumber(volts, 4)} V between phases, power factor ${formatNumber(powerFactor, 3)}`
  return { current, from, volts, powerFactor, assumptions }
}

const endsOf = (cable: Block, lookup: Lookup): readonly (Block | undefined)[] =>
  [factOf(cable, 'cable.from')?.value, factOf(cable, 'cable.to')?.value].map((name) =>
    name === undefined ? undefined : lookup.named(name),
  )

const motorOf = (cable: Block, lookup: Lookup): Block | undefined =>
  endsOf(cable, lookup).find((end) => end?.kind === 'motor') ?? lookup.near('motor')

const batteryOf = (cable: Block, lookup: Lookup): Block | undefined =>
  endsOf(cable, lookup).find((end) => end?.kind === 'battery') ?? lookup.near('battery')
