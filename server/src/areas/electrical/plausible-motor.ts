import { commonPractice, published } from '../../checks/check.ts'
import { between, isOutside, off, type Relation, shown } from '../../checks/relation.ts'
import { betweenPoints } from '../../engineering/between-points.ts'
import { reaches } from '../../engineering/compare.ts'
import { torqueOf } from '../../engineering/torsion.ts'
import { type Block, factOf } from '../../job/model.ts'
import { greatest } from '../../quantity/extremes.ts'

/** What rounded figures of a data sheet may differ by. */
const rounding = 0.1

/** N·m, from power and speed. */
function ratedTorque(motor: Block): number | undefined {
  const [power, speed] = [factOf(motor, 'motor.power')?.value, factOf(motor, 'motor.speed')?.value]
  return power === undefined || speed === undefined ? undefined : torqueOf({ power, speed })
}

const definition = 'power = torque × speed'

/** What motors and controllers keep between their rated, highest and short-time figures. */
export const plausibleMotor: readonly Relation[] = [
  between({
    id: 'motor-max-speed',
    on: 'motor',
    fact: 'motor.max-speed',
    kind: 'rotational speed',
    other: 'motor.speed',
    otherWords: 'its rated speed',
    rule: 'The highest speed of a motor is not below its rated speed.',
    why: 'The maker permits the rated speed. What lies above it is calculated up to the highest speed.',
    source: commonPractice('what the two speeds mean'),
    severity: 'error',
    sides: (speed) => ({ low: speed }),
    message: (found, of) => `The motor is rated at ${of}, but its highest speed is ${found}.`,
  }),
  {
    id: 'motor-peak-torque',
    on: 'motor',
    facts: ['motor.peak-torque', 'motor.power', 'motor.speed', 'motor.torque-curve'],
    rule: 'The peak torque of a motor is not below its continuous torque.',
    why: 'For a short time a motor gives at least what it gives all the time: its rated power over its rated speed, or the highest torque of its curve. The torque may be that of the shaft behind a gear, or in another unit.',
    source: published(`${definition}, definition of power`),
    severity: 'warning',
    broken: (lookup) => {
      const { block } = lookup
      const peak = factOf(block, 'motor.peak-torque')
      const [curve, power] = [factOf(block, 'motor.torque-curve'), factOf(block, 'motor.power')]
      const highest = greatest([
        ...(curve?.value.map(({ value }) => value) ?? []),
        ...(ratedTorque(block) === undefined ? [] : [ratedTorque(block) ?? 0]),
      ])
      const other = curve ?? power
      // A rated torque is rounded in data sheets.
      if (!peak || !other || highest === undefined || reaches(peak.value, highest * (1 - rounding / 10)))
        return []
      const [found, limit] = [shown(lookup, peak.value, 'torque'), shown(lookup, highest, 'torque')]
      return off(peak, {
        found,
        limit: `at least ${limit}`,
        message: `The motor gives ${limit} continuously, but its peak torque is ${found}.`,
        besides: [[other, 'its continuous torque follows from this']],
      })
    },
  },
  {
    id: 'motor-torque-curve',
    on: 'motor',
    facts: ['motor.torque-curve', 'motor.power', 'motor.speed'],
    rule: 'The torque curve of a motor goes through its rated point: at the rated speed it has 0.9 to 1.1 times the rated power over that speed.',
    why: 'Power and curve are of one motor. Where they differ, one is of another duty, voltage or unit, and results follow the curve.',
    source: published(`${definition}, definition of power; 10 %: common practice, no source`),
    severity: 'warning',
    broken: (lookup) => {
      const { block } = lookup
      const curve = factOf(block, 'motor.torque-curve')
      const [speed, power] = [factOf(block, 'motor.speed'), factOf(block, 'motor.power')]
      const rated = ratedTorque(block)
      if (!curve || !speed || !power || rated === undefined) return []
      const besides = [
        [power, 'its power'],
        [speed, 'its rated speed'],
      ] as const
      const [of, limit] = [shown(lookup, speed.value, 'rotational speed'), shown(lookup, rated, 'torque')]
      const torque = betweenPoints(curve.value, speed.value)
      if (torque === undefined)
        return off(curve, {
          found: `nothing at ${of}`,
          limit: `${limit} at ${of}`,
          message: `The torque curve has nothing at the rated speed of ${of}.`,
          besides,
        })
      if (!isOutside(torque, { low: rated * (1 - rounding), high: rated * (1 + rounding) })) return []
      const found = shown(lookup, torque, 'torque')
      return off(curve, {
        found,
        limit: `about ${limit}`,
        message: `At ${of} the torque curve has ${found}; the rated power is ${limit}.`,
        besides,
      })
    },
  },
  between({
    id: 'controller-peak-current',
    on: 'controller',
    fact: 'controller.peak-current',
    kind: 'current',
    other: 'controller.current',
    otherWords: 'its continuous current',
    rule: 'The peak current of a controller is not below its continuous current.',
    why: 'For a short time it gives at least what it gives all the time.',
    source: commonPractice('what the two currents mean'),
    severity: 'warning',
    sides: (current) => ({ low: current }),
    message: (found, of) => `The controller gives ${of} continuously, but its peak current is ${found}.`,
  }),
  between({
    id: 'gear-peak-torque',
    on: 'gear',
    fact: 'gear.peak-torque',
    kind: 'torque',
    other: 'gear.rated-torque',
    otherWords: 'its rated torque',
    rule: 'The peak torque of a gear is not below its rated torque.',
    why: 'For a short time it takes at least what it takes all the time.',
    source: commonPractice('what the two torques mean'),
    severity: 'warning',
    sides: (torque) => ({ low: torque }),
    message: (found, of) => `The gear takes ${of} continuously, but its peak torque is ${found}.`,
  }),
  between({
    id: 'coupling-peak-torque',
    on: 'coupling',
    fact: 'coupling.peak-torque',
    kind: 'torque',
    other: 'coupling.rated-torque',
    otherWords: 'its rated torque',
    rule: 'The peak torque of a coupling is not below its rated torque.',
    why: 'For a short time it takes at least what it takes all the time.',
    source: commonPractice('what the two torques mean'),
    severity: 'warning',
    plan: 'goes-on',
    sides: (torque) => ({ low: torque }),
    message: (found, of) => `The coupling takes ${of} continuously, but its peak torque is ${found}.`,
  }),
]
