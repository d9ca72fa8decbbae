import { at, check } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatAboutIn } from '../../../../quantity/format.ts'
import { isRoughly } from '../../plans/roughly.ts'
import { serviceRange } from '../../plans/service-energy.ts'
import { energyBalance } from '../../sources.ts'

const show = (si: number): string => formatAboutIn(si, 'nmi')

export default check({
  id: 'battery/range-short',
  severity: 'error',
  title: 'Range too short',
  why: 'At the speed of the point that takes the longest time, the boat does not get as far as the job asks for, the reserve kept.',
  source: energyBalance,
  on: 'service',
  needs: { wanted: 'service.range' },
  fires: `hull { calm-water-resistance: 4 kn 0.38 kN, 5 kn 0.62 kN, 6 kn 1.05 kN, 7 kn 2.2 kN, 8 kn 5 kN }
service {
  reserve: 20 %
  range: min 60 nmi
#        ^^^^^^^^^^ goes
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
  run: ({ wanted }, lookup) => {
    const found = serviceRange(lookup.block, lookup)
    const least = wanted.value.low
    if (!found.ok || least === undefined || reaches(found.value.range, least)) return []
    const { range, point, assumptions } = found.value
    return [
      at(wanted, {
        severity: isRoughly(assumptions) ? 'warning' : 'error',
        message: `The boat goes ${show(range)} at the speed of ${point}; the job asks for ${show(least)}.`,
        todo: 'Choose a lower speed or less range, or choose a larger battery.',
        found: show(range),
        limit: `at least ${show(least)}`,
        assumptions,
      }),
    ]
  },
})
