import { atHead, check, commonPractice } from '../../../../checks/check.ts'
import { shaftLosses } from '../../plans/drive-input.ts'
import { equalShares } from '../../plans/power.ts'
import { powerPlan } from '../../plans/whole-boat.ts'

export default check({
  id: 'hull/assumed',
  severity: 'information',
  title: 'Power table rests on assumptions',
  why: 'What the job does not state about the flow at the stern, the water and the losses is taken as usual. The finding lists it.',
  source: commonPractice('usual figures, no source'),
  on: 'hull',
  fires: `hull {
#<- rests on
  displacement: 5.6 t
  waterline-length: 9.2 m
}
drive main {
  propeller { diameter: 460 mm  pitch: 340 mm  blades: 3 }
}`,
  quiet: `hull {
  displacement: 5.6 t
}`,
  run: (_, lookup) => {
    const power = powerPlan(lookup.block, lookup)
    const assumptions = power.ok
      ? power.value.assumptions.filter((words) => words !== shaftLosses && words !== equalShares)
      : []
    return assumptions.length > 0
      ? [
          atHead(lookup.block, {
            message: 'The power table rests on assumptions.',
            todo: 'State what you know: each assumption has a fact of the hull, the service or a part.',
            assumptions,
          }),
        ]
      : []
  },
})
