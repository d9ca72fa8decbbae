import { atHead, check, commonPractice } from '../../../checks/check.ts'
import { childrenOf, factOf } from '../../../job/model.ts'

export default check({
  id: 'alignment/feet-on-one-side',
  severity: 'warning',
  title: 'Feet only on one side of the shaft line',
  why: 'Feet on both sides hold the machine against the torque and set its roll. With all feet on one side or on the shaft line, it could tip. Most often `across` is wrong.',
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
        message: `No foot is ${port ? 'to starboard' : starboard ? 'to port' : 'to either side'} of the shaft line.`,
        detail: `With all feet ${where} the shaft line, nothing holds the machine against roll.`,
        todo: 'Check `across` and the side of each foot. Measure from the shaft line.',
      }),
    ]
  },
})
