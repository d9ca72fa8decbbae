import { atHead, check, published } from '../../../../checks/check.ts'
import { mostLugs } from '../../../../engineering/electrical/terminal.ts'
import { lugsOnStud } from '../../plans/cable-terminals.ts'

export default check({
  id: 'cable/too-many-lugs',
  severity: 'error',
  title: 'More than four lugs on a stud',
  why: 'The stud is too short for a long pile, and each joint adds heat. If one lug loosens, all of them do.',
  source: published('ABYC E-11, as summarised: at most four'),
  on: ['battery', 'busbar', 'controller', 'motor', 'protection', 'isolator', 'contactor'],
  fires: `battery house { nominal: 96 V }
#<- 6 lugs
drive main {
  controller fore { input: 72..120 V }
  controller aft { input: 72..120 V }
  cable one { from: house  to: fore  parallel: 3 }
  cable two { from: house  to: aft  parallel: 3 }
}`,
  quiet: `battery house { nominal: 96 V }
drive main {
  controller { input: 72..120 V }
  cable one { from: house  to: controller  parallel: 2 }
  cable two { from: house  to: controller  parallel: 2 }
}`,
  run: (_facts, lookup) => {
    const lugs = lugsOnStud(lookup.block, lookup)
    return lugs <= mostLugs
      ? []
      : [
          atHead(lookup.block, {
            message: `A power stud here gets ${lugs} lugs; at most ${mostLugs} are allowed.`,
            detail:
              'Counted are the conductors in parallel of all cables that end here, for each pole or phase.',
            todo: 'Connect the cables to a busbar, or use fewer conductors of a larger size.',
            found: `${lugs}`,
            limit: `at most ${mostLugs}`,
            assumptions: ['each pole and each phase has one stud'],
          }),
        ]
  },
})
