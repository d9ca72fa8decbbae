import { atHead, check, theJobFile } from '../../../../checks/check.ts'
import { serviceEnergy } from '../../plans/service-energy.ts'
import { energyPlan, powerPlan } from '../../plans/whole-boat.ts'

export default check({
  id: 'service/energy-unknown',
  severity: 'information',
  title: 'Endurance not known',
  why: 'Whether the battery lasts is calculated only if it is clear which battery feeds each drive, what is in it, and how long the boat runs at which speed.',
  source: theJobFile('what it says of batteries and the service'),
  on: 'service',
  fires: `hull { displacement: 5.6 t  waterline-length: 9.2 m }
service {
#<- cannot
  point cruise { boat-speed: 5.5 kn  time: 1 h }
}
drive main {
  propeller { diameter: 460 mm  pitch: 340 mm  blades: 3 }
}`,
  quiet: `hull { calm-water-resistance: 4 kn 0.38 kN, 5 kn 0.62 kN, 6 kn 1.05 kN, 7 kn 2.2 kN, 8 kn 5 kN }
service {
  reserve: 20 %
  point cruise { boat-speed: 5.5 kn  time: 1 h }
}
battery house { nominal: 96 V  capacity: 210 Ah  chemistry: lfp  usable: 80 % }
drive main {
  propeller { diameter: 460 mm  pitch: 340 mm  blades: 3  blade-area-ratio: 55 %  depth: 0.5 m }
  gear { ratio: 2.5 }
  motor turning { power: 15 kW  speed: 1500 rpm  max-speed: 2600 rpm }
}`,
  run: (_, lookup) => {
    const { block } = lookup
    if (!powerPlan(block, lookup).ok) return []
    const energy = energyPlan(block, lookup)
    const outcome = energy.ok ? serviceEnergy(block, lookup) : energy
    return outcome.ok
      ? []
      : [
          atHead(block, {
            message: 'Whether the battery lasts for the service cannot be calculated.',
            detail: outcome.fault.words,
            todo: 'State what is missing, or correct it.',
          }),
        ]
  },
})
