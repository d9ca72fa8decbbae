import { at, check, published } from '../../../../checks/check.ts'
import { aheadRotation, shaftRotation } from '../../../../engineering/rotation.ts'
import { factOf } from '../../../../job/model.ts'
import { aheadTurns } from '../../../common/ahead-turns.ts'
import { unlessReplaced } from '../../history.ts'
import { partOf } from '../../plans/test-log.ts'

export default check({
  id: 'test/rotation-differs',
  severity: 'error',
  title: 'Motor that turned another way than the propeller needs',
  why: 'The record is what happened, so it counts more than what follows from the phase map. With a motor that turns the wrong way the propeller drives the boat astern.',
  source: published('IEC 60034-8: seen facing the drive end; the drive end faces the propeller (assumed)'),
  on: 'test',
  needs: { turns: 'test.turns' },
  fires: `drive main {
  propeller { turns: right-hand }
  gear { ratio: 2  turns: same }
  motor propulsion { terminals: U, V, W }
  test t1 { kind: rotation  on: propulsion  taken: 2026-03-12  turns: counter-clockwise  coupled: no }
#                                                                     ^^^^^^^^^^^^^^^^^ right-hand
}`,
  quiet: `drive main {
  propeller { turns: right-hand }
  gear { ratio: 2  turns: same }
  motor propulsion { terminals: U, V, W }
  test t1 { kind: rotation  on: propulsion  taken: 2026-03-12  turns: clockwise  coupled: no }
}`,
  run: ({ turns }, lookup) => {
    const motor = partOf(lookup)
    if (factOf(lookup.block, 'test.kind')?.value !== 'rotation' || motor?.kind !== 'motor') return []
    const near = lookup.from(motor)
    const [propeller, gear, drive] = [near.near('propeller'), near.near('gear'), near.near('drive')]
    const hand = propeller && factOf(propeller, 'propeller.turns')
    const geared = gear && factOf(gear, 'gear.turns')?.value
    const assumptions = ['the drive end of the motor faces the propeller', '`turns` is with ahead commanded']
    if (hand && (!gear || geared)) {
      const shaft = shaftRotation({ motor: turns.value, driveEnd: 'aft', gear: geared })
      if (shaft !== aheadRotation(hand.value))
        return unlessReplaced(lookup, [
          at(turns, {
            message: `The motor turned ${turns.value}: that drives a ${hand.value} propeller astern.`,
            todo: 'Find out why before the shaft is coupled, and test again.',
            found: turns.value,
            assumptions,
            related: [{ at: hand.at, message: 'the hand of the propeller' }],
          }),
        ])
    }
    const computed = drive && aheadTurns(drive, near)
    return computed?.ok && computed.value.motor !== turns.value
      ? unlessReplaced(lookup, [
          at(turns, {
            severity: 'warning',
            message: `The motor turned ${turns.value}; by phase map and settings it turns ${computed.value.motor}.`,
            todo: 'Find which of them is wrong: the record, the phase map, or a setting of the controller.',
            found: turns.value,
            limit: computed.value.motor,
            assumptions,
          }),
        ])
      : []
  },
})
