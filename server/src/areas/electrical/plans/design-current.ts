import { inverterVoltage, lineCurrent } from '../../../engineering/electrical/current.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { least } from '../../../quantity/extremes.ts'
import { formatNumber, formatSi } from '../../../quantity/format.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { assumedFigures } from '../../common/assumed-figures.ts'
import { nameOfString, stringOf } from '../../common/battery-string.ts'
import { markedAssumed } from '../../common/marked-assumed.ts'
import { ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { lowestOfString, lowOf } from '../../common/string-facts.ts'
import { type Assume, assuming } from './assuming.ts'
import { formatAssumption } from './assumption-words.ts'
import { batteriesOf } from './cable-batteries.ts'
import { type CableSystem, endsOf, systemOf } from './cable-circuit.ts'
import { chargersThrough, type Feed, feedOf, feedsAlone } from './cable-feed.ts'
import { type CableOutcome, outcomeOf, unsaid } from './cable-outcome.ts'
import { amperesOf, motorInput, otherDraw } from './draws.ts'
import { convertersFeeding } from './let-through.ts'
import { linkCurrent } from './link-current.ts'
import { flowAt } from './load-flow.ts'

/** What a cable has to carry. */
export interface CableCurrent {
  readonly system: CableSystem
  /** Continuous current of the pole or the phase, A. */
  readonly current: number
  readonly currentFrom: string
  /** Voltage the drop is held against, V: at the battery, or between two phases. */
  readonly volts?: number
  readonly powerFactor: number
  readonly assumptions: readonly string[]
}

/** The continuous current a cable is sized for: as it states, else from the motors it feeds, at the low end of the battery window; or why it
 * cannot be told. What it states is not used where the motors need far more. */
export const cableCurrent = plan((cable: Block, lookup: Lookup): CableOutcome<CableCurrent> => {
  const outcome = outcomeOf(() => currentOf(cable, lookup, statedFact(cable, 'cable.design-current')))
  const low = statedTooLow(cable, lookup)
  return low ? ok(low.calculated) : outcome
})

/** What a cable needs is at most so many times what it states: one that shares its load with others carries a part of it, one that does not
 * carries all, as far as losses are known. Common practice, no source. */
const plausibleRatio = { sharing: 4, alone: 1.25 }

/** Phase cables of its drive that end at a motor. */
const phaseCablesAt = plan((motor: Block, lookup: Lookup): number => {
  const cables = motor.parent ? childrenOf(motor.parent, 'cable') : []
  return cables.filter((cable) => endsOf(cable, lookup.from(cable)).includes(motor)).length
})

function sharesLoad(cable: Block, lookup: Lookup): boolean {
  if (systemOf(cable, lookup) === 'dc') return !feedsAlone(cable, lookup)
  const [motor] = motorsAt(cable, lookup)
  return motor !== undefined && phaseCablesAt(motor, lookup.from(motor)) > 1
}

/** The current that a cable states, A, and what the motors it feeds need, where the one is so far below the other that sharing the load does not
 * explain it. `times` is how far it may be. */
export const statedTooLow = plan((cable: Block, lookup: Lookup) => {
  const stated = factOf(cable, 'cable.design-current')?.value
  if (stated === undefined) return undefined
  const calculated = outcomeOf(() => currentOf(cable, lookup, undefined))
  if (!calculated.ok || stated * plausibleRatio.alone >= calculated.value.current) return undefined
  const times = sharesLoad(cable, lookup) ? plausibleRatio.sharing : plausibleRatio.alone
  return stated * times < calculated.value.current
    ? { stated, calculated: calculated.value, times }
    : undefined
})

function currentOf(cable: Block, lookup: Lookup, stated: number | undefined): CableOutcome<CableCurrent> {
  const system = systemOf(cable, lookup)
  if (!system) return unsaid('whether it carries DC or three phases')
  return system === 'dc' ? ofFeeder(cable, lookup, stated) : ofPhase(cable, lookup, stated)
}

const asStated = 'current stated by the cable'

/** `15 kW at the shaft of the motor`. */
function shaftWords(powers: readonly number[]): string {
  const total = powers.reduce((sum, power) => sum + power, 0)
  const where = powers.length === 1 ? 'the shaft of the motor' : `the shafts of ${powers.length} motors`
  return `${formatSi(total, 'power')} at ${where}`
}

/** Lowest voltage of the batteries, and whether the job says it. */
function lowestOf(batteries: readonly Block[], assume: Assume, lookup: Lookup): number | undefined {
  const lows = batteries.map((battery) => {
    const string = stringOf(battery, lookup)
    const lowest = lowestOfString(string)
    if (lowest !== undefined && lowOf(string) === undefined)
      assume(
        string.length > 1
          ? `${nameOfString(string)} does not fall below ${formatSi(lowest, 'voltage')}: the low end of a window is not stated`
          : `the battery does not fall below its nominal ${formatSi(lowest, 'voltage')}: the low end of its window is not stated`,
      )
    return lowest
  })
  return least(lows.filter((low) => low !== undefined))
}

function ofFeeder(cable: Block, lookup: Lookup, stated: number | undefined): CableOutcome<CableCurrent> {
  const { assumptions, assume, or } = assuming()
  const batteries = batteriesOf(cable, lookup)
  const converters = convertersFeeding(cable, lookup)
  const volts = lowestOf(batteries, assume, lookup) ?? least(converters.flatMap(lowestOutput))
  const common = { system: 'dc', powerFactor: 1, assumptions, ...(volts !== undefined && { volts }) } as const
  if (stated !== undefined) {
    markedAssumed(batteries).forEach(assume)
    return ok({ ...common, current: stated, currentFrom: asStated })
  }
  const charging = chargersThrough(cable, lookup)
  const charged = chargeOf(charging.chargers)
  if (charged === undefined) return unsaid('the current of the charger')
  if (charging.isAll) return ok({ ...common, current: charged, currentFrom: ofCharger })
  const fed = feedOf(cable, lookup)
  if (!fed.ok) {
    const link = linkCurrent(cable, lookup)
    if (!link) return fed
    markedAssumed(batteries).forEach(assume)
    link.assumptions.forEach(assume)
    return ok({
      ...common,
      current: Math.max(link.amps, charged),
      currentFrom: `link of batteries, ${link.name}`,
    })
  }
  const feed = fed.value
  const driven = feed.motors.flatMap(({ motor, controllers }) => [motor, ...controllers])
  markedAssumed([...batteries, ...driven]).forEach(assume)
  const powers = feed.motors.flatMap(({ motor }) => statedFact(motor, 'motor.power') ?? [])
  if (powers.length < feed.motors.length) return unsaid('the power of the motor')
  if (volts === undefined) return unsaid('the voltage of the battery')
  const lowestAt = (parts: readonly Block[]): number =>
    least(parts.flatMap((part) => flowAt(part, lookup.from(part))?.lowest ?? [])) ?? volts
  const others = feed.others.map((load) => {
    const draw = otherDraw(load, or)
    return draw && amperesOf(draw, lowestAt([load]))
  })
  if (others.some((current) => current === undefined))
    return unsaid('what each load and converter that it feeds draws')
  const forMotors = feed.motors.reduce(
    (sum, { motor, controllers }) =>
      sum +
      (motorInput(motor, controllers, or) ?? 0) / lowestAt(controllers.length > 0 ? controllers : [motor]),
    0,
  )
  const total = others.reduce<number>((sum, current = 0) => sum + current, forMotors)
  if (charged > total) return ok({ ...common, current: charged, currentFrom: ofCharger })
  if (feed.batteries.length > 1) {
    const most = mostOf(feed, total)
    if (most !== undefined)
      return ok({
        ...common,
        current: Math.max(most, charged),
        currentFrom: 'the most that its batteries may give',
      })
    assume('the cable carries the whole load: other batteries that feed it may be off')
  }
  const low = `${formatSi(volts, 'voltage')} at the low end of the ${converters.length > 0 ? 'converter' : 'battery'}`
  const whence = [
    ...(powers.length > 0 ? [shaftWords(powers)] : []),
    ...feed.others.map(({ kind, name }) => name ?? kind),
  ]
  return ok({ ...common, current: total, currentFrom: `${whence.join(', ')}, ${low}` })
}

/** What the batteries before a cable may give, A, where that is less than the whole load (A), and the others may give the rest. */
function mostOf({ batteries, before }: Feed, load: number): number | undefined {
  const give = (some: readonly Block[]): number =>
    some.reduce((sum, one) => sum + (statedFact(one, 'battery.current') ?? Number.POSITIVE_INFINITY), 0)
  const most = give(before)
  return before.length > 0 && most < load && give(batteries) >= load && Number.isFinite(give(batteries))
    ? most
    : undefined
}

const lowestOutput = (converter: Block): readonly number[] => {
  const low = statedFact(converter, 'converter.output')?.low
  return low === undefined ? [] : [low]
}

const ofCharger = 'current of the charger'

/** What some chargers give together, A; undefined where one does not say. */
function chargeOf(chargers: readonly Block[]): number | undefined {
  const currents = chargers.map((charger) => statedFact(charger, 'charger.current'))
  return currents.some((current) => current === undefined)
    ? undefined
    : currents.reduce<number>((sum, current = 0) => sum + current, 0)
}

/** The motors at the ends of a cable; without one the motor that goes with it. */
export function motorsAt(cable: Block, lookup: Lookup): readonly Block[] {
  const here = endsOf(cable, lookup).flatMap((end) => (end?.kind === 'motor' ? [end] : []))
  const near = here.length > 0 ? undefined : lookup.near('motor')
  return near ? [near] : here
}

function ofPhase(cable: Block, lookup: Lookup, stated: number | undefined): CableOutcome<CableCurrent> {
  const { assumptions, assume, or } = assuming()
  const motors = motorsAt(cable, lookup)
  const [motor] = motors
  const batteries = batteriesOf(cable, lookup)
  markedAssumed([motor, ...batteries]).forEach(assume)
  const volts = phaseVoltage(motor, batteries, assume, lookup)
  const powerFactor = or(
    statedFact(motor, 'motor.power-factor'),
    assumedFigures.powerFactor,
    'power factor of the motor',
  )
  const common = {
    system: 'three-phase',
    powerFactor,
    assumptions,
    ...(volts !== undefined && { volts }),
  } as const
  if (stated !== undefined) return ok({ ...common, current: stated, currentFrom: asStated })
  if (motors.length > 1) return unsaid('which of the two motors it feeds')
  if (!motor) return unsaid('which motor it feeds')
  const power = statedFact(motor, 'motor.power')
  if (power === undefined) return unsaid('the power of the motor')
  if (volts === undefined) return unsaid('the voltage of motor or battery')
  const current = lineCurrent({
    shaftPower: power,
    lineVoltage: volts,
    powerFactor,
    efficiency: or(
      statedFact(motor, 'motor.efficiency'),
      assumedFigures.motorEfficiency,
      'efficiency of the motor',
    ),
  })
  const currentFrom = `${shaftWords([power])}, ${formatSi(volts, 'voltage')} between phases, power factor ${formatNumber(powerFactor, 3)}`
  return ok({ ...common, current, currentFrom })
}

/** The rated voltage of the motor, or the most its controller can make of the lowest battery voltage when that is less: the current for full
 * power is greatest there. */
function phaseVoltage(
  motor: Block | undefined,
  batteries: readonly Block[],
  assume: Assume,
  lookup: Lookup,
): number | undefined {
  const rated = statedFact(motor, 'motor.voltage')
  if (rated !== undefined) {
    const lows = batteries.flatMap((battery) => lowOf(stringOf(battery, lookup)) ?? [])
    const low = least(lows)
    const most = low === undefined ? undefined : inverterVoltage(low).volts
    if (most !== undefined && most < rated) {
      assume(
        `full power is drawn at the low end of the battery too: there the controller gives at most ${formatSi(most, 'voltage')}, less than the motor voltage of ${formatSi(rated, 'voltage')}`,
      )
      return most
    }
    if (batteries.length === 0)
      assume(
        'the battery keeps up the rated voltage of the motor: the job does not state which battery feeds it',
      )
    return rated
  }
  const lowest = lowestOf(batteries, assume, lookup)
  if (lowest === undefined) return undefined
  const estimate = inverterVoltage(lowest)
  estimate.assumptions.map(formatAssumption).forEach(assume)
  return estimate.volts
}
