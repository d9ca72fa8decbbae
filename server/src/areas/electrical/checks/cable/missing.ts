import { atHead, check, commonPractice } from '../../../../checks/check.ts'
import { isLikeUnknown, severityOfMissing, whyRequired } from '../../../../checks/missing.ts'
import { type Block, childrenOf } from '../../../../job/model.ts'
import { asks } from '../../../../vocabulary/status.ts'
import { endsOf } from '../../plans/cable-circuit.ts'

const job = (phases: string) => `job "Launch" {
  vessel: "Launch 07"
  status: issued
}
drive main {
  motor propulsion { power: 15 kW }
  controller { input: 72..120 V }
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
${phases}}
battery house { nominal: 96 V  window: 84..108 V }`

/** Whether a cable between these may bring a machine its current: what leads from a controller to a motor feeds the motor. */
const feeds = (machine: Block, ends: readonly (Block | undefined)[]): boolean =>
  ends.includes(machine) &&
  (machine.kind === 'motor' || ends.some((end) => end !== machine && end?.kind !== 'motor'))

export default check({
  id: 'cable/missing',
  severity: 'error',
  followsStatus: true,
  claim: {
    from: 'issued',
    words: 'A cable ends at each motor of a drive, and one that is not its phase cable at each controller.',
  },
  title: 'Motor or controller without a cable that feeds it',
  why: 'A cable that is not in the job has no conductor size, no length and no fuse that anybody checked. From `issued` on, a cable must end at each motor, and one that is not its phase cable at each controller.',
  source: commonPractice('a machine is fed by a cable (common practice, no source)'),
  on: 'every kind',
  fires: job('').replace('  controller', '# ^^^^^^^^^^^^^^^^ No cable ends at\n  controller'),
  quiet: job(
    '  cable phases { from: controller  to: propulsion  conductor: 70 mm2  length: 1.8 m  insulation: 105 degC }\n',
  ),
  run: (_facts, lookup) => {
    const { block, status, ofKind } = lookup
    const drive = block.parent
    if (
      !drive ||
      isLikeUnknown(block) ||
      !['motor', 'controller'].includes(block.kind) ||
      !status ||
      !asks(status, 'issued')
    )
      return []
    const cables = [...childrenOf(drive, 'cable'), ...ofKind('cable')]
    // A cable whose ends cannot be read may be the one.
    const mayEndHere = cables.some(
      (cable) =>
        cable.unread.has('from') || cable.unread.has('to') || feeds(block, endsOf(cable, lookup.from(cable))),
    )
    return mayEndHere
      ? []
      : [
          atHead(block, {
            severity: severityOfMissing(status),
            message:
              block.kind === 'motor'
                ? 'No cable ends at the motor.'
                : 'No cable ends at the controller from the battery.',
            detail: whyRequired(status),
            todo: 'Write the cable, with `from` and `to`.',
          }),
        ]
  },
})
