import { check, published } from '../../../../checks/check.ts'
import { markedTwice } from '../../terminals.ts'

export default check({
  id: 'phases/motor-terminal-twice',
  severity: 'error',
  title: 'Motor terminal listed twice',
  why: 'Each terminal of a machine has its own mark, so one was misread. A phase map checked against such a list cannot be trusted.',
  source: published('IEC 60034-8 and IEC 60445 (from memory): each terminal has a mark of its own'),
  on: 'motor',
  needs: { terminals: 'motor.terminals' },
  fires: `drive main {
  motor { power: 15 kW  terminals: U, U, W }
#                                     ^ U
}`,
  quiet: `drive main {
  motor { power: 15 kW  terminals: U, V, W }
}`,
  run: ({ terminals }) => markedTwice('motor', terminals),
})
