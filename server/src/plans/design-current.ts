import { dcCurrent, inverterVoltage, lineCurrent } from '../engineering/electrical/current.ts'
import type { Lookup } from '../job/lookup.ts'
import type { Block } from '../job/model.ts'
import { formatNumber } from '../quantity/format.ts'
import type { BlockName } from '../vocabulary/index.ts'
import { said } from './said.ts'

export interface DesignCurrent {
  /** Continuous current of the pole or the phase, A. */
  readonly current: number
  readonly from: string
  /** Voltage the drop is held against, V: at the battery, or between two phases. */
  readonly volts?: number
  readonly powerFactor: number
  readonly assumptions: readonly string[]
}

/** What the job does not say and the current cannot be worked out without. */
export interface Unsaid {
  readonly unsaid: string
}

/** Taken where the file is silent; each is told as an assumption. Common practice, no source. */
const usual = { motorEfficiency: 0.9, controllerEfficiency: 0.95, powerFactor: 0.9 }

/** The blocks a cable joins, in the order from, to. */
export const endsOf = (cable: Block, lookup: Lookup): readonly (Block | undefined)[] =>
  [said(cable, 'cable.from'), said(cable, 'cable.to')].map((name) =>
    name === undefined ? undefined : lookup.named(name),
  )

/** The continuous current a cable is sized for: as it states, else from the motor, at the low end of the battery window. Throws RangeError on
 * figures that cannot be worked with. */
export function designCurrent(
  cable: Block,
  system: 'dc' | 'three-phase',
  lookup: Lookup,
): DesignCurrent | Unsaid {
  const ends = endsOf(cable, lookup)
  const partOf = (kind: BlockName) => ends.find((end) => end?.kind === kind) ?? lookup.near(kind)
  const parts = { motor: partOf('motor'), battery: partOf('battery'), controller: partOf('controller') }
  return system === 'dc' ? ofFeeder(cable, parts) : ofPhase(cable, parts)
}

interface Parts {
  readonly motor: Block | undefined
  readonly battery: Block | undefined
  readonly controller: Block | undefined
}

const asStated = 'the current the cable states'
const kilowatts = (power: number): string => `${formatNumber(power / 1000, 4)} kW at the shaft of the motor`

/** Collects what had to be assumed. */
function assuming() {
  const assumptions: string[] = []
  return {
    assumptions,
    or: (value: number | undefined, otherwise: number, what: string): number => {
      if (value === undefined)
        assumptions.push(`${what} is ${formatNumber(otherwise, 3)}: the job does not say it`)
      return value ?? otherwise
    },
  }
}

/** Lowest voltage of the battery, and whether the job says it. */
function lowestOf(battery: Block | undefined, assumptions: string[]): number | undefined {
  const low = said(battery, 'battery.window')?.low
  const nominal = said(battery, 'battery.nominal')
  if (low === undefined && nominal !== undefined)
    assumptions.push(
      `the battery falls no lower than its nominal ${formatNumber(nominal, 4)} V: the low end of its window is not said`,
    )
  return low ?? nominal
}

function ofFeeder(cable: Block, { motor, battery, controller }: Parts): DesignCurrent | Unsaid {
  const { assumptions, or } = assuming()
  const stated = said(cable, 'cable.current')
  const volts = lowestOf(battery, assumptions)
  if (stated !== undefined)
    return {
      current: stated,
      from: asStated,
      ...(volts !== undefined && { volts }),
      powerFactor: 1,
      assumptions,
    }
  const power = said(motor, 'motor.power')
  if (power === undefined) return { unsaid: 'the power of the motor, or the current of the cable' }
  if (volts === undefined) return { unsaid: 'the voltage of the battery, or the current of the cable' }
  const current = dcCurrent({
    shaftPower: power,
    lowestVoltage: volts,
    motorEfficiency: or(said(motor, 'motor.efficiency'), usual.motorEfficiency, 'efficiency of the motor'),
    inverterEfficiency: or(
      said(controller, 'controller.efficiency'),
      usual.controllerEfficiency,
      'efficiency of the controller',
    ),
  })
  const from = `${kilowatts(power)}, ${formatNumber(volts, 4)} V at the low end of the battery`
  return { current, from, volts, powerFactor: 1, assumptions }
}

function ofPhase(cable: Block, { motor, battery }: Parts): DesignCurrent | Unsaid {
  const { assumptions, or } = assuming()
  const stated = said(cable, 'cable.current')
  const volts = phaseVoltage(motor, battery, assumptions)
  const powerFactor = or(said(motor, 'motor.power-factor'), usual.powerFactor, 'power factor of the motor')
  if (stated !== undefined)
    return {
      current: stated,
      from: asStated,
      ...(volts !== undefined && { volts }),
      powerFactor,
      assumptions,
    }
  const power = said(motor, 'motor.power')
  if (power === undefined) return { unsaid: 'the power of the motor, or the current of the cable' }
  if (volts === undefined) return { unsaid: 'the voltage of motor or battery, or the current of the cable' }
  const current = lineCurrent({
    shaftPower: power,
    lineVoltage: volts,
    powerFactor,
    efficiency: or(said(motor, 'motor.efficiency'), usual.motorEfficiency, 'efficiency of the motor'),
  })
  const from = `${kilowatts(power)}, ${formatNumber(volts, 4)} V between phases, power factor ${formatNumber(powerFactor, 3)}`
  return { current, from, volts, powerFactor, assumptions }
}

/** The rated voltage of the motor, or the most its controller can make of the lowest battery voltage when that is less: the current for full
 * power is greatest there. */
function phaseVoltage(
  motor: Block | undefined,
  battery: Block | undefined,
  assumptions: string[],
): number | undefined {
  const rated = said(motor, 'motor.voltage')
  if (rated !== undefined) {
    const low = said(battery, 'battery.window')?.low
    const most = low === undefined ? undefined : inverterVoltage({ dcVoltage: low }).volts
    if (most !== undefined && most < rated) {
      assumptions.push(
        `full power is drawn at the low end of the battery too, where the controller makes ${formatNumber(most, 4)} V at most, less than the ${formatNumber(rated, 4)} V the motor is rated for`,
      )
      return most
    }
    return rated
  }
  const lowest = lowestOf(battery, assumptions)
  if (lowest === undefined) return undefined
  const estimate = inverterVoltage({ dcVoltage: lowest })
  assumptions.push(...estimate.assumptions)
  return estimate.volts
}
