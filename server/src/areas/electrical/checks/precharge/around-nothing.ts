import { atHead, check, theJobFile } from '../../../../checks/check.ts'
import { chargesNothing } from '../../plans/precharge-circuit.ts'

export default check({
  id: 'precharge/around-nothing',
  severity: 'warning',
  title: 'Precharge that charges nothing',
  why: 'Either the controller that it is for is missing in the job or has its own precharge, or the precharge is in the wrong drive. Nothing of it is checked then.',
  source: theJobFile('the controllers of the drive, and what its switch is bolted to'),
  on: 'precharge',
  fires: `battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 15 mohm }
drive main {
  contactor main-contactor { current: 250 A  voltage: 150 V }
  precharge { around: main-contactor  resistance: 47 ohm }
# ^^^^^^^^^ charges no controller
}`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 15 mohm }
drive main {
  controller { input: 72..120 V  capacitance: 6.8 mF }
  contactor main-contactor { current: 250 A  voltage: 150 V  makes: 500 A }
  precharge {
    around: main-contactor
    resistance: 47 ohm
  }
}`,
  run: (_facts, lookup) =>
    !lookup.isTaken && chargesNothing(lookup.block, lookup)
      ? [
          atHead(lookup.block, {
            message: 'The precharge charges no controller.',
            detail: 'There is none beside it, or each has a precharge built in.',
            todo: 'Add the controller, move the precharge to its drive, or remove it.',
          }),
        ]
      : [],
})
