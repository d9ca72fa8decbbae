import { bedFault } from '../../plans/alignment-feet.ts'
import { atHead, check, published } from '../check.ts'

export default check({
  id: 'alignment/feet-cannot-set-slope',
  severity: 'error',
  title: 'Feet that cannot set the slope',
  why: 'Feet at one distance from the coupling can raise the machine but not tilt it as the faces need. Such a bed is nearly always miswritten.',
  source: published('statics of a rigid body'),
  on: 'bed',
  plan: 'waits',
  fires: `drive main {
  bed {
# ^^^ no slope can be set
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
            message: fault.words,
            todo: 'Measure each foot from the coupling faces and from the shaft line.',
          }),
        ]
      : []
  },
})
