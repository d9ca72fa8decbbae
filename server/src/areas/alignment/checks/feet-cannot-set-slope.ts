import { atHead, check, published } from '../../../checks/check.ts'
import { firstLine } from '../../../checks/one-line.ts'
import { bedFault } from '../plans/feet.ts'

export default check({
  id: 'alignment/feet-cannot-set-slope',
  severity: 'error',
  title: 'Feet that cannot set the slope',
  why: 'Feet at the same distance from the coupling can raise the machine but not tilt it. Most often a distance is wrong.',
  source: published('statics of a rigid body'),
  on: 'bed',
  plan: 'waits',
  fires: `drive main {
  bed {
# ^^^ cannot set the slope
    adjuster: stud-and-nuts
    thread: M16
    foot port { from-coupling: 180 mm  across: 140 mm port }
    foot stbd { from-coupling: 180 mm  across: 140 mm starboard }
  }
}`,
  quiet: `drive main {
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm port }
  }
}`,
  run: (_facts, { block }) => {
    const fault = bedFault(block)
    return fault
      ? [
          atHead(block, {
            ...firstLine(fault.words),
            todo: 'Measure each foot from the coupling faces and from the shaft line.',
          }),
        ]
      : []
  },
})
