import { childrenOf, factOf } from '../../job/model.ts'
import { atHead, check, commonPractice } from '../check.ts'

export default check({
  id: 'alignment/feet-on-one-side',
  severity: 'warning',
  title: 'Feet on one side of the shaft line only',
  why: 'Feet on both sides hold the machine against the torque and set its roll. On one side, or all on the shaft line, it would rest on a line or hang over: most often `across` is miswritten.',
  source: commonPractice('common practice, no source'),
  on: 'bed',
  plan: 'waits',
  fires: `drive main {
  bed {
# ^^^ port
    adjuster: stud-and-nuts
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm port }
  }
}`,
  quiet: `drive main {
  bed {
    adjuster: stud-and-nuts
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm starboard }
  }
}`,
  run: (_facts, { block }) => {
    const feet = childrenOf(block, 'foot').map((foot) => factOf(foot, 'foot.across')?.value)
    const across = feet.filter((y) => y !== undefined)
    if (across.length < 2 || across.length < feet.length) return []
    const port = across.some((y) => y < 0)
    const starboard = across.some((y) => y > 0)
    if (port && starboard) return []
    const where = port ? 'to port of' : starboard ? 'to starboard of' : 'on'
    return [
      atHead(block, {
        message: `No foot stands ${port ? 'to starboard' : starboard ? 'to port' : 'to either side'}: with all feet ${where} the shaft line, the roll of the machine cannot be held.`,
        todo: 'Check `across` of each foot and its side; measure from the shaft line.',
      }),
    ]
  },
})
