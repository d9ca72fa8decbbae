import { twiceListed } from '../../plans/phase-faults.ts'
import { at, check, published } from '../check.ts'

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
  run: ({ terminals }) =>
    twiceListed(terminals).map((twice) => ({
      ...at(terminals, {
        message: `The motor has two terminals marked ${twice.name}.`,
        todo: 'Read the marks on the machine again and write each once. The controller holds charge after it is switched off: wait as its maker says and prove it dead.',
        found: twice.name,
      }),
      at: twice.at,
    })),
})
