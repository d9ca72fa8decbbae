import { published } from '../../../checks/check.ts'
import type { Rotation } from '../../../engineering/rotation.ts'
import type { Block } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { type AheadTurns, turnsOfMap } from '../../common/ahead-turns.ts'
import { figure } from '../../common/figure.ts'
import { failed, type Outcome, ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { rotationWords } from '../rotation-words.ts'

const source = published('IEC 60034-8, as instructions for industrial low-voltage motors cite it')

type Turning = AheadTurns & { readonly speed: number; readonly ratio: number }

const silent = (words: string) => failed({ type: 'unsaid', words })

/** How the drive of a phase map turns, with its rated speed. */
function turningOf(_map: Block, lookup: Lookup): Outcome<Turning> {
  const turns = turnsOfMap(lookup)
  if (!turns) return silent('The phase map is not the one of a drive.')
  if (!turns.ok) return turns
  const [motor, gear] = [lookup.near('motor'), lookup.near('gear')]
  const speed = statedFact(motor, 'motor.speed')
  const ratio = gear ? statedFact(gear, 'gear.ratio') : 1
  if (speed === undefined) return silent('The rated speed of the motor is not stated.')
  if (ratio === undefined) return silent('The ratio of the gear is not stated.')
  return ok({ ...turns.value, speed, ratio })
}

const signed = (speed: number, rotation: Rotation): number => (rotation === 'clockwise' ? speed : -speed)

const motorSpeed = figure({
  id: 'phases/motor-speed-ahead',
  on: 'phase-map',
  title: 'Motor, set ahead',
  kind: 'rotational speed',
  doc: 'Rated speed with the direction that follows from the phases and the controller: positive is clockwise, facing the drive end of the motor.',
  formula:
    'as the motor states; the other way for two exchanged phases and for a reversed controller, both together as stated.',
  source,
  from: turningOf,
  of: ({ speed, motor, assumptions }) => ({ value: signed(speed, motor), assumptions }),
})

const shaftSpeed = figure({
  id: 'phases/shaft-speed-ahead',
  on: 'phase-map',
  title: 'Shaft, set ahead',
  kind: 'rotational speed',
  doc: 'The same behind the gear: positive is clockwise, looking forward. A right-hand propeller needs positive, a left-hand one negative.',
  formula: 'speed of the motor / ratio; the other way behind a gear that turns opposite.',
  source,
  from: turningOf,
  of: (turning) => {
    const { speed, ratio, shaft, hand, assumptions } = turning
    return {
      value: signed(speed / ratio, shaft),
      ...(hand && {
        limit: hand === 'right-hand' ? { low: 0 } : { high: 0 },
        limitFrom: `a ${hand} propeller going ahead`,
      }),
      from: rotationWords(turning),
      assumptions,
    }
  },
})

export const phaseFigures = [motorSpeed, shaftSpeed]
