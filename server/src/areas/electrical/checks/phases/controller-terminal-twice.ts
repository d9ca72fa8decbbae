import { check, published } from '../../../../checks/check.ts'
import { markedTwice } from '../../terminals.ts'

export default check({
  id: 'phases/controller-terminal-twice',
  severity: 'error',
  title: 'Controller terminal listed twice',
  why: 'Each terminal of a machine has its own mark, so one was misread. A phase map checked against such a list cannot be trusted.',
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
