import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { elide } from '../../../quantity/elide.ts'
import { greatest } from '../../../quantity/extremes.ts'
import { formatBoth, formatSi } from '../../../quantity/format.ts'
import type { Kind } from '../../../quantity/kinds.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { lastReading } from '../../alignment/plans/moves.ts'
import { formatLoad } from '../../common/amperes.ts'
import { joinedInSeries, nameOfString, stringOf } from '../../common/battery-string.ts'
import { type Danger, dangerousFrom } from '../../common/dangers.ts'
import { isHighStated } from '../../common/string-facts.ts'
import { bankCurrent } from '../../electrical/plans/bank-fault.ts'
import { batteriesAround, highestOfBank } from '../../electrical/plans/banks-around.ts'
import { chargeOf, type Discharge, dischargeOf, needOf } from '../../electrical/plans/controller-charge.ts'
import { suppliesOf } from '../../electrical/plans/controller-supply.ts'
import { heaviestMass } from './shaft-mass.ts'

/** A danger as it is met in a job. */
export interface DangerInJob {
  /** The block where it is. */
  readonly block: Block
  /** How large, SI: infinite where it is not known. */
  readonly size: number
  /** The danger and its figure, in one line. */
  readonly words: string
  readonly detail?: string
  /** The figure. */
  readonly found?: string
}

const unknown = Number.POSITIVE_INFINITY
/** A danger is not measured: three digits say how large it is. */
const digits = 3

const roughly = (si: number, kind: Kind, { system }: Pick<Lookup, 'system'>): string =>
  formatBoth(si, kind, system, digits)

const nameOf = (block: Block): string => (block.name ? `${block.kind} ${elide(block.name)}` : block.kind)

/** What is said of a voltage, in one line each. */
const dangerousToTouch = `From ${formatSi(dangerousFrom('live-voltage'), 'voltage')} DC it is dangerous to touch with wet skin.`
const countsAsLive = 'So it counts as dangerous to touch.'

/** What a battery is in series with. */
function inSeries(battery: Block, lookup: Lookup): string {
  const members = joinedInSeries(battery, lookup)?.members
  return members ? `In series: ${nameOfString(members.map(lookup.blockOf))}. ` : ''
}

function liveVoltage(battery: Block, lookup: Lookup): readonly DangerInJob[] {
  const volts = highestOfBank(battery, lookup)
  if (volts === undefined)
    return [
      {
        block: battery,
        size: unknown,
        words: `The highest voltage of ${nameOf(battery)} is not known.`,
        detail: `${inSeries(battery, lookup)}${countsAsLive}`,
      },
    ]
  const found = formatSi(volts, 'voltage')
  return [
    {
      block: battery,
      size: volts,
      words: `The ${nameOf(battery)} reaches ${found} DC and cannot be switched off.`,
      detail: `${inSeries(battery, lookup)}${dangerousToTouch}${
        !isHighStated(stringOf(battery, lookup))
          ? ' No highest voltage is stated, so 1.25 times the nominal voltage is assumed for charging.'
          : ''
      }`,
      found,
    },
  ]
}

/** What of a drive is live, or carries what the battery gives. */
const electrical = (drive: Block): Block | undefined =>
  ['controller', 'motor', 'protection', 'cable'].flatMap((kind) => childrenOf(drive, kind))[0]

/** What a drive says of its voltage beyond what its batteries say. */
function liveInDrive(drive: Block, lookup: Lookup): readonly DangerInJob[] {
  const block = electrical(drive)
  if (!block) return []
  const { hasOwn, highest: banks, elsewhere } = batteriesAround(drive, lookup)
  if (elsewhere) return liveVoltage(elsewhere, lookup).map((met) => ({ ...met, block }))
  const controllers = childrenOf(drive, 'controller').flatMap((controller): DangerInJob[] => {
    const volts = factOf(controller, 'controller.input')?.value.high
    if (volts === undefined || suppliesOf(controller, lookup.from(controller)).length > 0) return []
    const found = formatSi(volts, 'voltage')
    return [
      {
        block: controller,
        size: volts,
        words: `The ${nameOf(controller)} accepts up to ${found} DC, and the voltage of its battery is not known.`,
        detail: dangerousToTouch,
        found,
      },
    ]
  })
  const isBounded = banks.length > 0 || controllers.length > 0
  const most = greatest([0, ...banks, ...controllers.map(({ size }) => size)]) ?? 0
  const motors = childrenOf(drive, 'motor').flatMap((motor): DangerInJob[] => {
    const volts = needOf(motor)
    if (volts === undefined || volts <= most) return []
    const found = formatSi(volts, 'voltage', 'metric', digits)
    return [
      {
        block: motor,
        // What it needs at least says nothing of what it gets at most.
        size: isBounded || volts >= dangerousFrom('live-voltage') ? volts : unknown,
        words: `The ${nameOf(motor)} needs at least ${found} DC: √2 times its rated voltage.`,
        detail:
          volts >= dangerousFrom('live-voltage')
            ? dangerousToTouch
            : `The job does not state the voltage of its battery. ${countsAsLive}`,
        found,
      },
    ]
  })
  if (hasOwn || controllers.length + motors.length > 0) return [...controllers, ...motors]
  return [
    {
      block,
      size: unknown,
      words: 'The voltage of this drive is not known.',
      detail: `The job has no battery, and no voltage of a controller or a motor. ${countsAsLive}`,
    },
  ]
}

const enoughToBurn = 'So it counts as enough to burn and to melt metal.'

function shortCircuit(battery: Block, lookup: Lookup): readonly DangerInJob[] {
  const current = bankCurrent(battery, lookup)
  const volts = highestOfBank(battery, lookup)
  if (current === undefined || volts === undefined)
    return [
      {
        block: battery,
        size: unknown,
        words: `The short-circuit current of ${nameOf(battery)} is not known.`,
        detail: `${inSeries(battery, lookup)}${enoughToBurn}`,
      },
    ]
  const found = formatLoad(current)
  return [
    {
      block: battery,
      size: current * volts,
      words: `A short circuit of ${nameOf(battery)} reaches ${found}.`,
      detail: `${inSeries(battery, lookup)}Its arc burns and melts metal.`,
      found,
    },
  ]
}

function shortCircuitInDrive(drive: Block, lookup: Lookup): readonly DangerInJob[] {
  const block = electrical(drive)
  if (!block) return []
  const { hasOwn, elsewhere } = batteriesAround(drive, lookup)
  if (elsewhere) return shortCircuit(elsewhere, lookup).map((met) => ({ ...met, block }))
  if (hasOwn) return []
  return [
    {
      block,
      size: unknown,
      words: 'The short-circuit current of this drive is not known: the job has no battery.',
      detail: enoughToBurn,
    },
  ]
}

/** How long the charge lasts, where the job states what discharges it. */
function fallsTo(discharge: Discharge | undefined): string {
  if (!discharge) return ''
  const [time, volts] = [
    formatSi(discharge.wet, 'time', 'metric', digits),
    formatSi(dangerousFrom('live-voltage'), 'voltage'),
  ]
  return ` Its discharge resistance takes ${discharge.isLeast ? 'at least ' : ''}${time} to bring it down to ${volts}. It can fail: measure all the same.`
}

function storedCharge(drive: Block, lookup: Lookup): readonly DangerInJob[] {
  const controllers = childrenOf(drive, 'controller')
  const block = electrical(drive)
  if (controllers.length === 0)
    return block
      ? [
          {
            block,
            size: unknown,
            words: 'How much charge the controller holds when switched off is not known.',
            detail: 'The drive has no controller block, so it counts as dangerous.',
          },
        ]
      : []
  return controllers.map((controller): DangerInJob => {
    const charge = chargeOf(controller, lookup.from(controller))
    if (!charge.ok)
      return {
        block: controller,
        size: unknown,
        words: `How much charge the ${nameOf(controller)} holds when switched off is not known.`,
        detail: `${charge.fault.words.replace(/\.$/, '')}, so it counts as dangerous.`,
      }
    const { capacitance, voltage, energy: size, isLeast } = charge.value
    const found = formatSi(size, 'energy', 'metric', digits)
    return {
      block: controller,
      size,
      words: `The ${nameOf(controller)} holds ${isLeast ? 'at least ' : ''}${found} after it is switched off.`,
      detail: `From ${formatSi(dangerousFrom('stored-charge'), 'energy')} it is dangerous: ½CV² of ${formatSi(capacitance, 'capacitance')} at ${formatSi(voltage, 'voltage', 'metric', digits)}${isLeast ? ', which the motor needs' : ''}.${fallsTo(dischargeOf(controller, lookup.from(controller)))}`,
      found,
    }
  })
}

function turningShaft(drive: Block, lookup: Lookup): readonly DangerInJob[] {
  const motors = childrenOf(drive, 'motor')
  if (motors.length + childrenOf(drive, 'propeller').length === 0) return []
  const [block = drive] = ['coupling', 'shaft', 'propeller', 'motor'].flatMap((kind) =>
    childrenOf(drive, kind),
  )
  const powers = motors.map((motor) => factOf(motor, 'motor.power')?.value)
  const known = powers.flatMap((power) => power ?? [])
  if (known.length < powers.length || known.length === 0)
    return [{ block, size: unknown, words: 'The shaft can turn, by the motor or by the water.' }]
  const size = known.reduce((sum, power) => sum + power, 0)
  const found = roughly(size, 'power', lookup)
  return [{ block, size, words: `The shaft can turn, by the motor with ${found} or by the water.`, found }]
}

/** The machine of a drive: what its motors and its gear weigh. */
function machineWeight(drive: Block, lookup: Lookup): readonly DangerInJob[] {
  const [motors, gears] = [childrenOf(drive, 'motor'), childrenOf(drive, 'gear')]
  const [block] = [...childrenOf(drive, 'bed'), ...motors, ...gears]
  if (!block) return []
  const parts = [
    ...motors.map((motor) => ({ kind: 'motor', mass: factOf(motor, 'motor.mass')?.value })),
    ...gears.map((gear) => ({ kind: 'gear', mass: factOf(gear, 'gear.mass')?.value })),
  ]
  const known = parts.flatMap(({ kind, mass }) => (mass === undefined ? [] : { kind, mass }))
  const size = known.reduce((sum, { mass }) => sum + mass, 0)
  const isAll = known.length === parts.length && known.length > 0
  if (known.length === 0)
    return [{ block, size: unknown, words: 'The weight of the machine is not known.', detail: tooHeavy }]
  const found = roughly(size, 'mass', lookup)
  const weigh = `The ${partNames(known)} ${known.length > 1 ? 'weigh' : 'weighs'} ${found}`
  const open = partNames(parts.filter(({ mass }) => mass === undefined))
  if (!isAll && size < dangerousFrom('heavy-machine'))
    return [
      { block, size: unknown, words: `${weigh}; the weight of the ${open} is not known.`, detail: tooHeavy },
    ]
  return [
    {
      block,
      size,
      words: `${weigh}, without ${isAll ? 'anything attached' : `the ${open}`}.`,
      detail: onePerson(lookup),
      found,
    },
  ]
}

const tooHeavy = 'So it counts as too heavy to lift by hand.'
const onePerson = (lookup: Lookup): string =>
  `One person lifts ${roughly(dangerousFrom('heavy-machine'), 'mass', lookup)} at most.`

/** `motor`, `motors`, `motor and the gear`. */
const partNames = (parts: readonly { readonly kind: string }[]): string =>
  ['motor', 'gear']
    .flatMap((kind) => {
      const count = parts.filter((part) => part.kind === kind).length
      return count === 0 ? [] : [count === 1 ? kind : `${kind}s`]
    })
    .join(' and the ')

function propellerWeight(drive: Block, lookup: Lookup): readonly DangerInJob[] {
  return childrenOf(drive, 'propeller').flatMap((block): DangerInJob[] => {
    const size = factOf(block, 'propeller.mass')?.value
    if (size === undefined) return []
    const found = roughly(size, 'mass', lookup)
    return [{ block, size, words: `The propeller weighs ${found}.`, detail: onePerson(lookup), found }]
  })
}

/** The heaviest that a shaft can be: solid, of the heaviest material in use. */
function shaftWeight(drive: Block, lookup: Lookup): readonly DangerInJob[] {
  return childrenOf(drive, 'shaft').flatMap((block): DangerInJob[] => {
    const size = heaviestMass(block)
    if (size === undefined) return []
    const found = formatBoth(size, 'mass', lookup.system, 2)
    return [
      {
        block,
        size,
        words: `The shaft weighs up to ${found}.`,
        detail: `As solid bronze, from its diameter and length. ${onePerson(lookup)}`,
        found,
      },
    ]
  })
}

const heavyMachine = (drive: Block, lookup: Lookup): readonly DangerInJob[] => [
  ...machineWeight(drive, lookup),
  ...propellerWeight(drive, lookup),
  ...shaftWeight(drive, lookup),
]

/** Whether the boat lies in the water, as far as the job says. */
function isAfloat(drive: Block, lookup: Lookup): boolean | undefined {
  const reading = lastReading(drive)
  const afloat = reading && factOf(reading, 'reading.afloat')?.value
  const taken = reading && factOf(reading, 'reading.taken')?.value
  const [job] = lookup.ofKind('job')
  const launched = job && factOf(job, 'job.launched')?.value
  if (launched !== undefined && (taken === undefined || taken < launched)) return true
  return afloat === undefined ? undefined : afloat === 'yes'
}

const enters = 'While the seal is open, water can enter through the'

function openHull(drive: Block, lookup: Lookup): readonly DangerInJob[] {
  const [block] = ['seal', 'shaft-log'].flatMap((kind) => childrenOf(drive, kind))
  const afloat = isAfloat(drive, lookup)
  if (!block || afloat === false) return []
  const [log] = childrenOf(drive, 'shaft-log')
  const [shaft] = childrenOf(drive, 'shaft')
  const bore = log && factOf(log, 'shaft-log.bore')?.value
  const diameter = shaft && factOf(shaft, 'shaft.diameter')?.value.nominal
  const detail = afloat ? 'The boat is afloat.' : 'The job does not say whether the boat is afloat.'
  if (bore === undefined || diameter === undefined || bore <= diameter)
    return [{ block, size: unknown, words: `${enters} shaft log.`, detail }]
  const found = roughly(bore, 'length', lookup)
  return [
    {
      block,
      size: bore * bore - diameter * diameter,
      words: `${enters} ${found} shaft log.`,
      detail: `The shaft in it measures ${roughly(diameter, 'length', lookup)}. ${detail}`,
      found,
    },
  ]
}

type DangerBlockKind = 'battery' | 'drive'

/** Of which blocks each is asked, and how its figure is got. */
const figures: Readonly<
  Record<
    Danger,
    Readonly<Partial<Record<DangerBlockKind, (block: Block, lookup: Lookup) => readonly DangerInJob[]>>>
  >
> = {
  'live-voltage': { battery: liveVoltage, drive: liveInDrive },
  'stored-charge': { drive: storedCharge },
  'short-circuit': { battery: shortCircuit, drive: shortCircuitInDrive },
  'turning-shaft': { drive: turningShaft },
  'heavy-machine': { drive: heavyMachine },
  'open-hull': { drive: openHull },
}

export const dangerBlockKinds = (danger: Danger): readonly DangerBlockKind[] =>
  Object.keys(figures[danger]) as DangerBlockKind[]

/** Where work at the block that is asked meets the danger. A file without a job is a library: nobody works on it. */
export function dangersAt(danger: Danger, lookup: Lookup): readonly DangerInJob[] {
  const figure = figures[danger][lookup.block.kind as DangerBlockKind]
  return figure && lookup.ofKind('job').length > 0
    ? figure(lookup.block, lookup).filter(({ size }) => size >= dangerousFrom(danger))
    : []
}
