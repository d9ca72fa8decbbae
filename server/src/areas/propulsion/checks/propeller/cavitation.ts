import { at, check } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatShare } from '../../../../quantity/format-measures.ts'
import { bladeAreaOf } from '../../plans/blade-area.ts'
import { keller } from '../../sources.ts'

const percent = (share: number): string => formatShare(share, 3)

export default check({
  id: 'propeller/cavitation',
  severity: 'warning',
  title: 'Blade area too small: cavitation',
  why: 'Where a blade carries too much for its area, the water boils on its back. The propeller loses thrust, is loud, and its blades wear.',
  source: keller,
  on: 'propeller',
  needs: { area: 'propeller.blade-area-ratio', depth: 'propeller.depth' },
  fires: `hull { calm-water-resistance: 4 kn 0.8 kN, 6 kn 2.5 kN, 7 kn 5 kN }
service {
  reserve: 20 %
  point cruise { boat-speed: 5.5 kn  time: 1 h }
}
battery house { nominal: 96 V  capacity: 210 Ah  chemistry: lfp  usable: 80 % }
drive main {
  propeller {
    diameter: 460 mm
    pitch: 340 mm
    blades: 3
    depth: 0.3 m
    blade-area-ratio: 31 %
#                     ^^^^ too little
  }
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
  run: ({ area }, lookup) => {
    const found = bladeAreaOf(lookup.block, lookup)
    if (!found.ok || reaches(found.value.stated, found.value.needed)) return []
    const { stated, needed, thrust, boatSpeed, assumptions } = found.value
    return [
      at(area, {
        message: `The blade area is too little against cavitation: ${percent(stated)} of at least ${percent(needed)}.`,
        detail: `The propeller gives ${lookup.show(thrust, 'force')} at ${lookup.show(boatSpeed, 'speed')}.`,
        todo: 'Choose a propeller with more blade area, a larger one that turns more slowly, or run it deeper.',
        found: percent(stated),
        limit: `at least ${percent(needed)}`,
        assumptions,
      }),
    ]
  },
})
