import { check, published } from '../check.ts'
import { markedTwice } from '../terminals.ts'

export default check({
  id: 'phases/controller-terminal-twice',
  severity: 'error',
  title: 'Controller terminal listed twice',
  why: 'No two terminals of one machine have the same mark: one of them is misread, and a phase map held against the list is not to be trusted.',
  source: published('IEC 60034-8 and IEC 60445 (from memory): each terminal has a mark of its own'),
  on: 'controller',
  needs: { terminals: 'controller.terminals' },
  fires: `drive main {
  controller { terminals: A, A, C }
#                            ^ A
}`,
  quiet: `drive main {
  controller { terminals: A, B, C }
}`,
  run: ({ terminals }) => markedTwice('controller', terminals),
})
