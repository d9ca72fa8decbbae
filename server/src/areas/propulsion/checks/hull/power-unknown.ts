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
  motor { power: 15 kW  speed: 1500 rpm }
}`,
  run: (_, lookup) => {
    const power = powerPlan(lookup.block, lookup)
    const missing = power.ok ? power.value.noTop : power.fault.words
    if (missing === undefined) return []
    return [
      atHead(lookup.block, {
        message: power.ok ? 'No top speed can be calculated.' : 'No power table can be calculated.',
        detail: missing,
        todo: 'State what is missing, or correct it.',
      }),
    ]
  },
})
