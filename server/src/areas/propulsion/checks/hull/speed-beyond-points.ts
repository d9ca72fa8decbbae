import { at, check } from '../../../../checks/check.ts'
import { resistanceRange } from '../../../../engineering/propulsion/resistance.ts'
import { holds } from '../../../../quantity/band.ts'
import { ok } from '../../../common/outcome.ts'
import { attempt } from '../../plans/attempt.ts'
import { hullOf, resistanceSaid } from '../../plans/hull-input.ts'
import { balance } from '../../sources.ts'

export default check({
  id: 'hull/speed-beyond-points',
  severity: 'warning',
  title: 'Resistance not known at a speed of the service',
  why: 'A curve is never read beyond its points, and the displacement-hull rule holds up to a speed-length ratio of 1.5. Whether the boat reaches this speed, and for how long, is not calculated.',
  source: balance,
  on: 'point',
  needs: { speed: 'point.boat-speed' },
  fires: `hull { calm-water-resistance: 4 kn 0.38 kN, 5 kn 0.62 kN, 6 kn 1.05 kN, 7 kn 2.2 kN, 8 kn 5 kN }
service {
  reserve: 20 %
  point sprint {
    boat-speed: 9 kn
#               ^^^^ not known
    time: 10 min
  }
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
  run: ({ speed }, lookup) => {
    const hull = hullOf(lookup)
    const said = attempt(() => ok(hull && resistanceSaid(hull)))
    if (!said.ok || !said.value) return []
    const range = resistanceRange(said.value.by)
    if (holds(range, speed.value)) return []
    const limit = lookup.showBand(range, 'speed')
    return [
      at(speed, {
        message: `The resistance of the hull is not known at ${lookup.show(speed.value, 'speed')}.`,
        detail: `It is known from ${limit}.`,
        todo: 'Add a point to the resistance of the hull, or plan another speed.',
        found: lookup.show(speed.value, 'speed'),
        limit,
        ...(hull && { related: [{ at: hull.head, message: 'the hull' }] }),
      }),
    ]
  },
})
