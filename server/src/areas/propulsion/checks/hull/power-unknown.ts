import { atHead, check, theJobFile } from '../../../../checks/check.ts'
import { powerPlan } from '../../plans/whole-boat.ts'

export default check({
  id: 'hull/power-unknown',
  severity: 'information',
  title: 'No power table',
  why: 'Speed, power and range are calculated only if hull, propellers, gears and motors are described. Nothing is assumed for what is missing.',
  source: theJobFile('what it says of hull and drives'),
  on: 'hull',
  fires: `hull {
#<- No power table
  displacement: 5.6 t
}
drive main {
  propeller { diameter: 460 mm  pitch: 340 mm  blades: 3 }
}`,
  quiet: `hull {
  displacement: 5.6 t
  waterline-length: 9.2 m
}
drive main {
  propeller { diameter: 460 mm  pitch: 340 mm  blades: 3 }
}`,
  run: (_, lookup) => {
    const power = powerPlan(lookup.block, lookup)
    return power.ok
      ? []
      : [
          atHead(lookup.block, {
            message: 'No power table can be calculated.',
            detail: power.fault.words,
            todo: 'State what is missing, or correct it.',
          }),
        ]
  },
})
