import { check, published } from '../check.ts'
import { markedTwice } from '../terminals.ts'

export default check({
  id: 'phases/motor-terminal-twice',
  severity: 'error',
  title: 'Motor terminal listed twice',
  why: 'No two terminals of one machine have the same mark: one of them is misread, and a phase map held against the list is not to be trusted.',
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
