import { at, check, published } from '../../../../checks/check.ts'
import { standardRotation } from '../../../../engineering/electrical/phase-order.ts'

export default check({
  id: 'phases/marks-unlike-standard',
  severity: 'information',
  title: 'Motor that turns against its marks',
  why: 'By IEC 60034-8 a motor turns clockwise, facing its drive end, with the phases in order on U, V, W. Not every maker follows it. A direction that was read from the other end of the motor looks just the same.',
  source: published('IEC 60034-8, as instructions for industrial low-voltage motors cite it'),
  on: 'motor',
  needs: { terminals: 'motor.terminals', turns: 'motor.turns' },
  fires: `drive main {
  motor { power: 15 kW  terminals: U, V, W  turns: counter-clockwise }
#                                                  ^^^^^^^^^^^^^^^^^ clockwise
}`,
  quiet: `drive main {
  motor { power: 15 kW  terminals: U, V, W  turns: clockwise }
}`,
  run: ({ terminals, turns }) => {
    const usual = standardRotation(terminals.value.map(({ name }) => name))
    return usual === undefined || usual === turns.value
      ? []
      : [
          at(turns, {
            message: `The motor turns ${turns.value}; with these marks IEC 60034-8 has ${usual}.`,
            detail: 'Facing the drive end, phases in the order of `terminals`.',
            todo: 'Make sure that the direction is the maker’s, and seen facing the drive end.',
            found: turns.value,
            limit: usual,
            related: [{ at: terminals.at, message: 'the marks' }],
          }),
        ]
  },
})
