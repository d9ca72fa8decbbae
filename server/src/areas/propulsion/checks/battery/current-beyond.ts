import { at, check, theJobFile } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatLoading } from '../../../common/amperes.ts'
import { drawnFrom } from '../../plans/drawn.ts'

export default check({
  id: 'battery/current-beyond',
  severity: 'error',
  title: 'Drives take more than the battery permits',
  why: 'Above its continuous current a battery gets too hot, or its management system switches it off while the boat is under way.',
  source: theJobFile('the current stated at the battery'),
  on: 'battery',
  needs: { most: 'battery.current' },
  fires: `hull { calm-water-resistance: 4 kn 0.38 kN, 5 kn 0.62 kN, 6 kn 1.05 kN, 7 kn 2.2 kN, 8 kn 5 kN }
service {
  reserve: 20 %
  point cruise { boat-speed: 5.5 kn  time: 1 h }
}
battery house {
  nominal: 96 V
  capacity: 210 Ah
  chemistry: lfp
  usable: 80 %
  current: 105 A
#          ^^^^^ the drives take
}
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
  run: ({ most }, lookup) => {
    const drawn = drawnFrom(lookup.block, lookup)
    if (!drawn.ok || reaches(most.value, drawn.value.current)) return []
    const { where, volts, assumptions } = drawn.value
    const { current, carries } = formatLoading(drawn.value.current, most.value)
    return [
      at(most, {
        message: `The battery permits ${carries}, but the drives take ${current} ${where}.`,
        detail: `At ${lookup.show(volts, 'voltage')}, the lowest voltage of the bank.`,
        todo: 'Choose a larger battery, add one in parallel, or limit the power in the controller.',
        found: current,
        limit: `at most ${carries}`,
        assumptions,
      }),
    ]
  },
})
