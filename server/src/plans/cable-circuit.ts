import type { Lookup } from '../job/lookup.ts'
import { type Block, childrenOf } from '../job/model.ts'
import { remembered } from './remembered.ts'
import { said } from './said.ts'

export type CableSystem = 'dc' | 'three-phase'

/** What the job does not say and a result cannot be worked out without. */
export interface Unsaid {
  readonly unsaid: string
}

/** The blocks a cable joins, in the order from, to. Throws Unreadable. */
export const endsOf = remembered((cable: Block, lookup: Lookup): readonly (Block | undefined)[] =>
  (['from', 'to'] as const).map((end) =>
    said(cable, `cable.${end}`) === undefined ? undefined : lookup.referred(end),
  ),
)

/** What a cable carries: DC from a battery whatever else is said, then as it says, else by what it joins. Undefined when neither tells.
 * RangeError when what it says could not be read. */
export const systemOf = remembered((cable: Block, lookup: Lookup): CableSystem | undefined => {
  const ends = endsOf(cable, lookup).map((end) => end?.kind)
  if (ends.includes('battery')) return 'dc'
  const system = said(cable, 'cable.system')
  if (system) return system
  if (ends.includes('protection')) return 'dc'
  return ends.includes('motor') ? 'three-phase' : undefined
})

/** What depends on a DC network. */
interface Reach {
  readonly batteries: readonly Block[]
  /** Controllers, and motors wired to it without one. */
  readonly loads: readonly Block[]
}

/** What a DC cable feeds and from where. */
export interface Feed extends Reach {
  readonly motors: readonly Driven[]
}

/** A motor with the controller that it is fed through. */
export interface Driven {
  readonly motor: Block
  readonly controller?: Block | undefined
}

const isIn = (blocks: readonly (Block | undefined)[], block: Block): boolean =>
  blocks.some((other) => other?.node === block.node)

function driveOf(block: Block): Block | undefined {
  let drive: Block | undefined = block
  while (drive && drive.kind !== 'drive') drive = drive.parent
  return drive
}

/** Cables that may end at a block: those of its drive and those shared; at what is shared, those of every drive. */
function cablesAround(block: Block, lookup: Lookup): readonly Block[] {
  const drive = driveOf(block)
  const drives = drive ? [drive] : lookup.ofKind('drive')
  return [...drives.flatMap((each) => childrenOf(each, 'cable')), ...lookup.ofKind('cable')]
}

/** Everything that can be come to from a block along DC cables but this one. Batteries end the way: what lies behind one is fed by it. */
export function reachFrom(start: Block, without: Block, lookup: Lookup): Reach {
  const met = [start]
  for (const block of met) {
    if (block.kind === 'battery' || block.kind === 'motor') continue
    for (const cable of cablesAround(block, lookup)) {
      const from = lookup.from(cable)
      if (cable.node === without.node || systemOf(cable, from) !== 'dc') continue
      const ends = endsOf(cable, from)
      if (!isIn(ends, block)) continue
      for (const end of ends) if (end && !isIn(met, end)) met.push(end)
    }
  }
  return {
    batteries: met.filter(({ kind }) => kind === 'battery'),
    loads: met.filter(({ kind }) => kind === 'controller' || kind === 'motor'),
  }
}

const nothing: Reach = { batteries: [], loads: [] }

/** What a DC cable feeds: the side that has loads and no battery; else, where a controller or motor is at one end, that end. */
export function feedOf(cable: Block, lookup: Lookup): Feed | Unsaid {
  const ends = endsOf(cable, lookup)
  const sides = ends.map((end) => (end ? reachFrom(end, cable, lookup) : nothing))
  const side = loadedSide(ends, sides)
  if (side === 'unclear') return { unsaid: 'which way the current flows in it' }
  const loads = side === 'none' ? around(lookup) : (sides[side]?.loads ?? [])
  const batteries = sides.flatMap((each) => each.batteries)
  if (loads.length === 0) return { unsaid: 'what it feeds' }
  const motors: Driven[] = []
  for (const load of loads) {
    const driven = load.kind === 'motor' ? [{ motor: load }] : motorsOf(load, lookup)
    if ('unsaid' in driven) return driven
    motors.push(...driven.filter(({ motor }) => !motors.some((other) => other.motor.node === motor.node)))
  }
  return { batteries, loads, motors }
}

function loadedSide(
  ends: readonly (Block | undefined)[],
  sides: readonly Reach[],
): number | 'none' | 'unclear' {
  const loaded = sides.flatMap(({ loads }, index) => (loads.length > 0 ? [index] : []))
  const fed = loaded.filter((index) => sides[index]?.batteries.length === 0)
  const [first, second] = fed.length === 1 ? fed : loaded
  if (first === undefined) return 'none'
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

/** The motors a controller drives: those its phase cables lead to and, where it is the only one of its drive, those of the drive. */
function motorsOf(controller: Block, lookup: Lookup): readonly Driven[] | Unsaid {
  const drive = driveOf(controller)
  const own = drive ? childrenOf(drive, 'motor') : []
  const controllers = drive ? childrenOf(drive, 'controller') : []
  const linkedTo = (one: Block): readonly Block[] =>
    cablesAround(one, lookup).flatMap((cable) => {
      const from = lookup.from(cable)
      const ends = endsOf(cable, from)
      if (!isIn(ends, one) || systemOf(cable, from) === 'dc') return []
      return ends.flatMap((end) => (end?.kind === 'motor' ? [end] : []))
    })
  const linked = linkedTo(controller)
  if (controllers.length > 1) {
    const led = controllers.flatMap(linkedTo)
    const left = own.find((motor) => !isIn(led, motor))
    if (left) return { unsaid: `which controller drives ${called(left)}: no cable joins them` }
    if (linked.length === 0)
      return { unsaid: `which motor ${called(controller)} drives: no cable joins them` }
  }
  const near = linked.length + own.length > 0 ? undefined : lookup.from(controller).near('motor')
  const motors = [...linked, ...(controllers.length > 1 ? [] : own), ...(near ? [near] : [])]
  return motors.length === 0
    ? { unsaid: `which motor ${called(controller)} drives` }
    : motors.filter((motor, i) => !isIn(motors.slice(0, i), motor)).map((motor) => ({ motor, controller }))
}
