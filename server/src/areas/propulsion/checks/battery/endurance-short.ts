import { atHead, check } from '../../../../checks/check.ts'
import { formatAboutIn } from '../../../../quantity/format.ts'
import { formatShare } from '../../../../quantity/format-measures.ts'
import { isRoughly } from '../../plans/roughly.ts'
import { serviceEnergy } from '../../plans/service-energy.ts'
import { energyBalance } from '../../sources.ts'

const show = (si: number): string => formatAboutIn(si, 'h')

export default check({
  id: 'battery/endurance-short',
  severity: 'error',
  title: 'Battery does not last for the service',
  why: 'The points of the service together take more than the bank has above its reserve. The boat comes home on the reserve, or not at all.',
  source: energyBalance,
  on: 'service',
  fires: `hull { calm-water-resistance: 4 kn 0.38 kN, 5 kn 0.62 kN, 6 kn 1.05 kN, 7 kn 2.2 kN, 8 kn 5 kN }
service {
#<- 12 h
  reserve: 20 %
  point cruise { boat-speed: 5.5 kn  time: 12 h }
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
    const found = serviceEnergy(lookup.block, lookup)
    if (!found.ok || found.value.share <= 1 + 1e-9) return []
    const { share, time, assumptions } = found.value
    const percent = formatShare(share, 3)
    return [
      atHead(lookup.block, {
        severity: isRoughly(assumptions) ? 'warning' : 'error',
        message: `The battery does not last for the ${show(time)} of the service: it takes ${percent} of what may be used.`,
        detail: `It lasts for ${show(time / share)} of it, then the reserve begins.`,
        todo: 'Choose less time or a lower speed, or choose a larger battery.',
        found: percent,
        limit: 'at most 100 %',
        assumptions,
      }),
    ]
  },
})
