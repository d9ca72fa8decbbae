import { threePhaseInput } from '../engineering/electrical/current.ts'
import { childrenOf, factOf } from '../job/model.ts'
import { saidCarried, saidLoad } from '../plans/amperes.ts'
import { bankCurrent } from '../plans/bank-fault.ts'
import { onCharge } from '../plans/cable-protection.ts'
import { formatBand, formatSi } from '../quantity/format.ts'
import { commonPractice, published } from './check.ts'
import { between, isOutside, near, off, practice, type Relation } from './relation.ts'

/** What real batteries, controllers and motors keep between their facts. */
export const plausiblePower: readonly Relation[] = [
  {
    id: 'controller-gives-motor-current',
    on: 'controller',
    facts: ['controller.current', 'motor.power', 'motor.voltage', 'motor.power-factor', 'motor.efficiency'],
    rule: 'The continuous current of the controller is at least 0.9 times the line current of its motor at rated power.',
    why: 'With less the motor cannot give its rated power. Power factor and efficiency are taken as 0.9 where the job does not state them.',
    source: published('P = √3 U I cos φ η, any text on electrical machines; 0.9: common practice, no source'),
    severity: 'warning',
    broken: (context) => {
      const { block } = context
      const current = factOf(block, 'controller.current')
      const motor = context.near('motor')
      const power = motor && factOf(motor, 'motor.power')
      const voltage = motor && factOf(motor, 'motor.voltage')
      // Of several controllers each gives a part.
      const isOnly = !block.parent || childrenOf(block.parent, 'controller').length === 1
      if (!current || !power || !voltage || !isOnly) return []
      // From what one ampere brings in, so that no figure is too absurd to be compared.
      const perAmpere = threePhaseInput({
        lineVoltage: voltage.value,
        current: 1,
        powerFactor: factOf(motor, 'motor.power-factor')?.value ?? 0.9,
      })
      const needed = power.value / (perAmpere * (factOf(motor, 'motor.efficiency')?.value ?? 0.9))
      if (!isOutside(current.value, { low: 0.9 * needed })) return []
      const found = current.value < 1 ? formatSi(current.value, 'current') : saidCarried(current.value)
      const limit = saidLoad(needed)
      return off(current, {
        found,
        limit: `at least ${limit}`,
        message: `The controller gives ${found}; the motor needs ${limit} for its rated power.`,
        besides: [[power, 'the power of the motor']],
      })
    },
  },
  {
    id: 'motor-voltage',
    on: 'motor',
    facts: ['motor.voltage', 'battery.window', 'battery.nominal'],
    rule: 'The rated voltage of a motor is not above the highest voltage of its battery.',
    why: 'A controller makes at most 0.78 times the voltage of the battery between two phases.',
    source: commonPractice('an inverter does not raise the voltage'),
    severity: 'warning',
    broken: (context) => {
      const voltage = factOf(context.block, 'motor.voltage')
      const nominal = near(context, 'battery.nominal')
      const window = near(context, 'battery.window')
      const high = Math.max(window?.value.high ?? onCharge * (nominal?.value ?? 0), nominal?.value ?? 0)
      const battery = window ?? nominal
      if (!voltage || !battery || high === 0 || !isOutside(voltage.value, { high })) return []
      const [found, limit] = [voltage.value, high].map((si) => formatSi(si, 'voltage')) as [string, string]
      return off(voltage, {
        found,
        limit: `at most ${limit}`,
        message: `The motor is rated for ${found} between phases, but its battery reaches only ${limit}.`,
        besides: [[battery, 'the voltage of the battery']],
      })
    },
  },
  between({
    id: 'motor-mass',
    on: 'motor',
    fact: 'motor.mass',
    kind: 'mass',
    other: 'motor.power',
    otherKind: 'power',
    otherWords: 'the power of the motor',
    rule: 'A motor weighs 0.05 to 200 kg for each kilowatt.',
    why: 'The lightest motors weigh 0.1 kg for each kilowatt, old slow machines some tens.',
    source: practice('0.05 to 200 kg'),
    severity: 'warning',
    sides: (power) => ({ low: 0.05e-3 * power, high: 0.2 * power }),
    message: (found, of) => `A motor of ${of} that weighs ${found} is unlikely.`,
  }),
  {
    id: 'battery-fault',
    on: 'battery',
    facts: ['battery.capacity', 'battery.internal-resistance', 'battery.short-circuit-current'],
    rule: 'A short circuit of a battery draws 2 to 500 A for each ampere hour.',
    why: 'Below that the battery could hardly feed its motor. Above it no cell gives so much.',
    source: practice('2 to 500 A'),
    severity: 'warning',
    broken: ({ block }) => {
      const capacity = factOf(block, 'battery.capacity')
      const current = bankCurrent(block)
      if (!capacity || current === undefined) return []
      const hours = capacity.value / 3600
      const bounds = { low: 2 * hours, high: 500 * hours }
      if (!isOutside(current, bounds)) return []
      const found = formatSi(current, 'current')
      const limit = formatBand(bounds, 'current')
      const from = (['battery.internal-resistance', 'battery.short-circuit-current'] as const).flatMap(
        (path) => {
          const value = factOf(block, path)
          return value ? [[value, 'the short circuit follows from this'] as const] : []
        },
      )
      return off(capacity, {
        found,
        limit,
        message: `A short circuit of ${found} is unlikely for a battery of ${formatSi(capacity.value, 'charge')}.`,
        detail: `Batteries of this size give ${limit}.`,
        besides: from,
      })
    },
  },
]
