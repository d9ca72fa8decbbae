import { at, check, commonPractice } from '../../../../checks/check.ts'
import { type UsualTorque, usualTorques } from '../../../../engineering/electrical/terminal.ts'
import { greatest, least } from '../../../../quantity/extremes.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { terminalFact } from '../../plans/cable-terminals.ts'

const joints: Readonly<Record<UsualTorque['joint'], string>> = {
  'screw terminal': 'a screw terminal of copper alloy',
  'copper bar': 'a bolted copper bar, steel 8.8',
  switchgear: 'switchgear',
  'battery stud': 'a lead battery',
  'steel stud': 'a steel stud of grade 2',
}

const range = ({ low, high }: Pick<UsualTorque, 'low' | 'high'>): string =>
  low === high
    ? formatSi(high, 'torque')
    : `${formatSi(low, 'torque').replace(/ .*$/, '')} to ${formatSi(high, 'torque')}`

export default check({
  id: 'cable/torque-missing',
  severity: 'information',
  title: 'Stud without a tightening torque',
  why: 'A loose joint burns, and an overtightened stud breaks or leaks. What is usual for one thread differs up to four times by the kind of joint, so Shaftwright assumes none.',
  source: commonPractice(
    'one public source for each kind of joint: an inverter manual, a tutorial on DIN 43673, a switchgear guide, guides of battery makers, a power-supply manual',
  ),
  on: ['battery', 'busbar', 'controller', 'motor', 'protection', 'isolator', 'contactor'],
  fires: `battery house { nominal: 96 V  stud: M8 }
#                                    ^^ 6 to 20 N·m
`,
  quiet: `battery house { nominal: 96 V  stud: M8  torque: 11 N·m }
`,
  run: (_facts, { block }) => {
    const stud = terminalFact(block, 'stud')
    if (!stud || terminalFact(block, 'torque') || block.unread.has('torque')) return []
    const { diameter } = stud.value
    const known = diameter === undefined ? [] : usualTorques(diameter)
    const usual = known.map((one) => `${range(one)} for ${joints[one.joint]}`)
    const [low, high] = [least(known.map((one) => one.low)), greatest(known.map((one) => one.high))]
    return [
      at(stud, {
        message:
          low === undefined || high === undefined
            ? 'The torque of the stud is not stated.'
            : `The torque of the stud is not stated; by the kind of joint it is ${range({ low, high })}.`,
        detail:
          usual.length === 0
            ? 'No source seen has a usual torque for this thread.'
            : `Usual for this thread, and not interchangeable: ${usual.join('; ')}.`,
        todo: 'Write the `torque` that the maker of this part states.',
        found: 'not stated',
      }),
    ]
  },
})
