import { type Block, childrenOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { distinctStrings, isSeries, stringOf } from '../../common/battery-string.ts'
import { ok } from '../../common/outcome.ts'
import { endsOf } from './cable-circuit.ts'
import { type CableOutcome, unsaid } from './cable-outcome.ts'
import {
  alongBatteries,
  batteriesAlong,
  distinct,
  endsWay,
  motorsAlong,
  type Side,
  sideOf,
} from './dc-sides.ts'
import { driveOf } from './drive-of.ts'

/** What a DC cable feeds and from where. */
export interface Feed {
  readonly motors: readonly FedMotor[]
  /** Loads and the inputs of converters. */
  readonly others: readonly Block[]
  /** The batteries it can come from. */
  readonly batteries: readonly Block[]
  /** Those on the side from which it is fed, where all that it feeds is on the other. */
  readonly before: readonly Block[]
}

/** A motor with the controllers that it is fed through. */
export interface FedMotor {
  readonly motor: Block
  readonly controllers: readonly Block[]
}

/** The batteries at the ends of a cable, else those that DC cables lead to from there: of each string the first. */
export function batteriesReached(cable: Block, lookup: Lookup): readonly Block[] {
  const ends = endsOf(cable, lookup).flatMap((end) => end ?? [])
  const here = ends.filter(({ kind }) => kind === 'battery')
  return distinctStrings(here.length > 0 ? here : batteriesBehind(ends, cable, lookup), lookup)
}

function batteriesBehind(ends: readonly Block[], cable: Block, lookup: Lookup): readonly Block[] {
  // A battery at one end is among those that the other end leads to.
  const inside = ends.filter((end) => !endsWay(end))
  const lists = new Set((inside.length > 0 ? inside : ends).map((end) => batteriesAlong(end, cable, lookup)))
  const [first = [], ...more] = [...lists].filter((list) => list.length > 0)
  return distinct([first, ...more].flat()).map(lookup.blockOf)
}

/** What a DC cable feeds: the side that has loads and no battery; else, where a controller or motor is at one end, that end. One in a string carries
 * what the string feeds. */
export function feedOf(cable: Block, lookup: Lookup): CableOutcome<Feed> {
  const ends = endsOf(cable, lookup)
  const sides = ends.map((end) => end && sideOf(cable, end, lookup))
  const side = isSeries(cable) ? 'string' : loadedSide(ends, sides)
  if (side === 'unclear') return unsaid('which way the current flows in it')
  // All that takes current is on the side of the battery: a spur.
  if (side === 'nothing') return unsaid('what it feeds')
  const loads =
    side === 'string'
      ? alongBatteries(stringAt(ends, lookup), lookup).loads
      : side === 'none'
        ? around(lookup)
        : (sides[side]?.loads() ?? [])
  if (loads.length === 0) return unsaid('what it feeds')
  const motors = new Map<Block, readonly Block[]>()
  const others: Block[] = []
  for (const load of loads) {
    if (load.kind === 'load' || load.kind === 'converter') {
      others.push(load)
      continue
    }
    const isMotor = load.kind === 'motor'
    const driven = isMotor ? ok([load]) : motorsOf(load, lookup)
    if (!driven.ok) return driven
    for (const motor of driven.value)
      motors.set(motor, [...(motors.get(motor) ?? []), ...(isMotor ? [] : [load])])
  }
  const known = ends.flatMap((end) => end ?? [])
  return ok({
    motors: [...motors].map(([motor, controllers]) => ({ motor, controllers })),
    others,
    batteries: distinctStrings(batteriesBehind(known, cable, lookup), lookup),
    before:
      typeof side === 'number' && !sides[side]?.hasBattery
        ? distinctStrings(sides[1 - side]?.batteries() ?? [], lookup)
        : [],
  })
}

interface Charging {
  readonly chargers: readonly Block[]
  /** Nothing that draws current lies on their side. */
  readonly isAll: boolean
}

/** The batteries of the string that a cable in series is in. */
function stringAt(ends: readonly (Block | undefined)[], lookup: Lookup): readonly Block[] {
  const battery = ends.find((end) => end?.kind === 'battery')
  return battery ? stringOf(battery, lookup) : []
}

/** The chargers on one side of a cable that give to batteries on the other. */
export function chargersThrough(cable: Block, lookup: Lookup): Charging {
  if (isSeries(cable)) {
    const { chargers, loads } = alongBatteries(stringAt(endsOf(cable, lookup), lookup), lookup)
    return { chargers, isAll: chargers.length > 0 && loads.length === 0 }
  }
  const [from, to] = endsOf(cable, lookup).map((end) => end && sideOf(cable, end, lookup))
  const through = [
    [from, to],
    [to, from],
  ].flatMap(([here, there]) => {
    const chargers = there?.hasBattery && here ? here.chargers() : []
    return here && chargers.length > 0 ? [{ chargers, isAll: !here.hasLoad && !here.hasBattery }] : []
  })
  return {
    chargers: distinct(through.flatMap(({ chargers }) => chargers)),
    isAll: through.some(({ isAll }) => isAll),
  }
}

/** Whether all that lies behind a DC cable is fed through it alone. */
export function feedsAlone(cable: Block, lookup: Lookup): boolean {
  const sides = endsOf(cable, lookup).map((end) => end && sideOf(cable, end, lookup))
  return sides.filter((side) => side?.hasLoad && !side.hasBattery).length === 1
}

function loadedSide(
  ends: readonly (Block | undefined)[],
  sides: readonly (Side | undefined)[],
): number | 'none' | 'nothing' | 'unclear' {
  const loaded = sides.flatMap((side, index) => (side?.hasLoad ? [index] : []))
  const fed = loaded.filter((index) => !sides[index]?.hasBattery)
  const [first, second] = fed.length === 1 ? fed : loaded
  if (first === undefined) return 'none'
  if (fed.length === 0 && sides.some((side) => side && !side.hasBattery && !side.hasLoad)) return 'nothing'
  if (second === undefined) return first
  const devices = loaded.filter((index) => ['controller', 'motor'].includes(ends[index]?.kind ?? ''))
  return devices.length === 1 && devices[0] !== undefined ? devices[0] : 'unclear'
}

/** The only controller or motor there is to feed, where no cable leads on. */
function around(lookup: Lookup): readonly Block[] {
  const drive = driveOf(lookup.block)
  const only = lookup.near('controller')
  if (only) return [only]
  const motor = drive && childrenOf(drive, 'controller').length > 1 ? undefined : lookup.near('motor')
  return motor ? [motor] : []
}

/** `controller port`. */
const called = ({ kind, name }: Block): string => (name === undefined ? `the ${kind}` : `${kind} ${name}`)

/** The first motor of a drive that no phase cable joins to one of its controllers. */
const leftOver = plan((drive, lookup): BlockId | undefined => {
  const led = new Set(childrenOf(drive, 'controller').flatMap((one) => motorsAlong(one, lookup)))
  const left = childrenOf(drive, 'motor').find((motor) => !led.has(motor))
  return left && idOf(left)
})

/** The motors a controller drives: those its phase cables lead to and, where it is the only one of its drive, those of the drive. */
export function motorsOf(controller: Block, lookup: Lookup): CableOutcome<readonly Block[]> {
  const drive = driveOf(controller)
  const own = drive ? childrenOf(drive, 'motor') : []
  const isOneOfSeveral = drive !== undefined && childrenOf(drive, 'controller').length > 1
  const linked = motorsAlong(controller, lookup)
  if (isOneOfSeveral) {
    const left = leftOver(drive, lookup)
    if (left) return unsaid(`which controller drives ${called(lookup.blockOf(left))}: no cable joins them`)
    if (linked.length === 0) return unsaid(`which motor ${called(controller)} drives: no cable joins them`)
  }
  const near = linked.length + own.length > 0 ? undefined : lookup.from(controller).near('motor')
  const motors = distinct([...linked, ...(isOneOfSeveral ? [] : own), ...(near ? [near] : [])])
  return motors.length === 0 ? unsaid(`which motor ${called(controller)} drives`) : ok(motors)
}
