import { at, check } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { childrenOf, factOf } from '../../../../job/model.ts'
import { motorAtPoint } from '../../plans/motor-at-point.ts'
import { balance } from '../../sources.ts'

export default check({
  id: 'motor/speed-beyond',
  severity: 'error',
  title: 'Motor speed too low for the service',
  why: 'A motor is not turned faster than its maker permits: bearings, rotor and controller are not made for it. The boat does not reach this speed.',
  source: balance,
  on: 'point',
  needs: { speed: 'point.boat-speed' },
  fires: `hull { calm-water-resistance: 4 kn 0.38 kN, 5 kn 0.62 kN, 6 kn 1.05 kN, 7 kn 2.2 kN, 8 kn 5 kN }
service {
  reserve: 20 %
  point cruise {
    boat-speed: 6 kn
#               ^^^^ must turn
    time: 1 h
  }
}
battery house { nominal: 96 V  capacity: 210 Ah  chemistry: lfp  usable: 80 % }
drive main {
  propeller { diameter: 460 mm  pitch: 340 mm  blades: 3  blade-area-ratio: 55 %  depth: 0.5 m }
  gear { ratio: 4 }
  motor turning { power: 15 kW  speed: 1500 rpm  max-speed: 1600 rpm }
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
    const { block, show, blockOf } = lookup
    const outcome = motorAtPoint(block, lookup)
    if (!outcome.ok) return []
    const { motors, assumptions } = outcome.value
    return motors.flatMap(({ drive, name, speed: turns, maxSpeed }) => {
      if (maxSpeed === undefined || reaches(maxSpeed, turns)) return []
      const [found, limit] = [turns, maxSpeed].map((si) => show(si, 'rotational speed'))
      const [motor] = childrenOf(blockOf(drive), 'motor')
      const stated = motor && factOf(motor, 'motor.max-speed')
      return [
        at(speed, {
          // Without its highest speed nobody knows that it is beyond.
          severity: stated ? 'error' : 'warning',
          message: `At ${show(speed.value, 'speed')} the motor of ${name} must turn at ${found}; the highest is ${limit}.`,
          todo: stated
            ? 'Choose a lower speed, more pitch or a gear with a lower ratio.'
            : 'State the `max-speed` of the motor, from its maker.',
          found: found ?? '',
          limit: `at most ${limit}`,
          assumptions,
          ...(stated && { related: [{ at: stated.at, message: 'the highest speed' }] }),
        }),
      ]
    })
  },
})
