import { type PhaseOrder, pairsToExchange, phaseOrder } from '../../engineering/electrical/phase-order.ts'
import type { PhasePair } from '../../engineering/electrical/phases.ts'
import {
  aheadRotation,
  type Hand,
  motorRotation,
  type Rotation,
  shaftRotation,
} from '../../engineering/rotation.ts'
import { type Block, childrenOf } from '../../job/model.ts'
import type { Lookup } from '../../store/lookup.ts'
import { plan } from '../../store/plan.ts'
import type { FactValue } from '../../vocabulary/index.ts'
import { markedAssumed } from './marked-assumed.ts'
import { type Fault, failed, type Outcome, ok } from './outcome.ts'
import { statedFact, Unreadable } from './stated-fact.ts'

export type PositionSensor = FactValue<'motor.position-sensor'>

/** How motor and shaft of a drive turn with the controller set ahead. */
export interface AheadTurns {
  /** Facing its drive end. */
  readonly motor: Rotation
  /** Looking forward. */
  readonly shaft: Rotation
  /** Absent where the propeller does not state it: then nothing shows whether it drives ahead. */
  readonly hand?: Hand
  readonly drivesAhead?: boolean
  readonly order: PhaseOrder
  readonly sensor?: PositionSensor
  readonly isReversed: boolean
  readonly gear?: 'same' | 'opposite'
  /** The two pairs whose motor ends to exchange to turn it the other way, where it has no position sensor. */
  readonly exchange: readonly [PhasePair, PhasePair]
  readonly assumptions: readonly string[]
}

/** `unsaid`: facts are missing. `unread`, `map`: what is written has a finding of its own. `sensor`: the phases are not in the order that the
 * position sensor is set for, so the motor does not simply turn the other way. */
export interface AheadFault extends Fault<'unsaid' | 'unread' | 'map' | 'not-three' | 'several' | 'sensor'> {
  readonly missing?: readonly string[]
  readonly order?: PhaseOrder
  readonly sensor?: PositionSensor
}

const fault = (type: AheadFault['type'], because: string, more: Partial<AheadFault> = {}) =>
  failed<AheadFault>({ type, words: `How the shaft turns going ahead is not known: ${because}.`, ...more })

const marks = (list: readonly { readonly name: string }[] | undefined): readonly string[] =>
  (list ?? []).map(({ name }) => name)

/** What follows from the phase map, motor, controller, gear and propeller of a drive, or why nothing does. */
export const aheadTurns = plan((drive: Block, lookup: Lookup): Outcome<AheadTurns, AheadFault> => {
  try {
    return turnsOf(drive, lookup)
  } catch (error) {
    if (error instanceof Unreadable) return fault('unread', error.message)
    throw error
  }
})

/** The same for the drive of a phase map; undefined where it is in none, and for another one than the first, which has a finding. */
export function turnsOfMap(lookup: Lookup): Outcome<AheadTurns, AheadFault> | undefined {
  const drive = lookup.near('drive')
  return drive && childrenOf(drive, 'phase-map')[0] === lookup.block ? aheadTurns(drive, lookup) : undefined
}

function turnsOf(drive: Block, lookup: Lookup): Outcome<AheadTurns, AheadFault> {
  const several = (['motor', 'controller'] as const).find((kind) => childrenOf(drive, kind).length > 1)
  if (several) return fault('several', `the drive has several ${several}s`)
  const [map] = childrenOf(drive, 'phase-map')
  const [motor, controller, gear] = [lookup.near('motor'), lookup.near('controller'), lookup.near('gear')]
  const from = marks(statedFact(controller, 'controller.terminals'))
  const to = marks(statedFact(motor, 'motor.terminals'))
  const pairs = statedFact(map, 'phase-map.pairs')?.map(({ from, to }) => [from, to] as const)
  const stated = statedFact(motor, 'motor.turns')
  const geared = statedFact(gear, 'gear.turns')
  const missing = [
    ...(pairs ? [] : ['the phase map']),
    ...(from.length > 0 ? [] : ['`terminals` of the controller']),
    ...(to.length > 0 ? [] : ['`terminals` of the motor']),
    ...(stated ? [] : ['`turns` of the motor']),
    ...(gear && !geared ? ['`turns` of the gear'] : []),
  ]
  const counts = [from.length, to.length].filter((count) => count > 0)
  const odd = counts.find((count) => count !== 3)
  if (odd !== undefined) return fault('not-three', `it follows for three phases, and there are ${odd}`)
  if (!pairs || !stated || missing.length > 0)
    return fault('unsaid', `the job does not state ${missing.join(', ')}`, { missing })
  const order = phaseOrder(from, to, pairs)
  const exchange = pairsToExchange(from, to, pairs)
  if (!order || !exchange) return fault('map', 'the phase map does not join the terminals one to one')
  const sensor = statedFact(motor, 'motor.position-sensor')
  if (sensor && sensor !== 'none' && order !== 'same')
    return fault('sensor', `the phases are not in the order that the ${sensor} is set for`, { order, sensor })
  const reversed = statedFact(controller, 'controller.reversed')
  const isReversed = reversed === 'yes'
  const turning = motorRotation({ stated, isExchanged: order === 'exchanged', isReversed })
  const shaft = shaftRotation({ motor: turning, driveEnd: 'aft', gear: geared })
  const propeller = lookup.near('propeller')
  const hand = statedFact(propeller, 'propeller.turns')
  return ok({
    motor: turning,
    shaft,
    ...(hand && { hand, drivesAhead: shaft === aheadRotation(hand) }),
    order,
    ...(sensor && { sensor }),
    isReversed,
    ...(geared && { gear: geared }),
    exchange,
    assumptions: [
      'the drive end of the motor faces the propeller',
      'going ahead, the controller puts out its phases in the order of its `terminals`',
      ...(reversed ? [] : ['the controller is not set to reverse the motor']),
      ...(sensor || order === 'same' ? [] : ['the motor has no position sensor']),
      ...markedAssumed([map, motor, controller, gear, propeller]),
    ],
  })
}
