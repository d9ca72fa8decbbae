import { atHead, check } from '../../../../checks/check.ts'
import { topOf } from '../../plans/at-block.ts'
import { balance } from '../../sources.ts'

export default check({
  id: 'hull/drives-too-weak',
  severity: 'error',
  title: 'Drives too weak for the hull',
  why: 'The drives cannot hold even the lowest speed that the resistance of the hull is stated for. One of the figures may have a wrong unit, or the gear ratio may be inverted.',
  source: balance,
  on: 'hull',
  fires: `hull { calm-water-resistance: 4 kn 30 kN, 6 kn 90 kN }
#<- cannot
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
    const found = topOf(lookup.block, lookup)
    if (!found.ok || found.value.top.bound !== 'less-than') return []
    const speed = lookup.show(found.value.top.boatSpeed, 'speed')
    return [
      atHead(lookup.block, {
        message: `The drives cannot hold ${speed}, the lowest speed that the resistance is known for.`,
        todo: 'Check the resistance, the power of the motor, the gear ratio and the size of the propeller.',
        found: `less than ${speed}`,
        assumptions: found.value.assumptions,
      }),
    ]
  },
})
