import { at, check } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { motorAtPoint } from '../../plans/motor-at-point.ts'
import { balance } from '../../sources.ts'

export default check({
  id: 'motor/torque-beyond',
  severity: 'error',
  title: 'Motor torque too low for the service',
  why: 'Above its continuous torque a motor gets too hot, and its controller reduces the current. The boat does not hold this speed.',
  source: balance,
  on: 'point',
  needs: { speed: 'point.boat-speed' },
  fires: `hull { calm-water-resistance: 4 kn 0.38 kN, 5 kn 0.62 kN, 6 kn 1.05 kN, 7 kn 2.2 kN, 8 kn 5 kN }
service {
  reserve: 20 %
  point sprint {
    boat-speed: 8 kn
#               ^^^^ must give
    time: 10 min
  }
}
battery house { nominal: 96 V  capacity: 210 Ah  chemistry: lfp  usable: 80 % }
drive main {
  propeller { diameter: 460 mm  pitch: 340 mm  blades: 3  blade-area-ratio: 55 %  depth: 0.5 m }
  gear { ratio: 2.5 }
  motor turning { power: 15 kW  speed: 1500 rpm  max-speed: 4500 rpm }
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
    const { block, show } = lookup
    const outcome = motorAtPoint(block, lookup)
    if (!outcome.ok) return []
    const { motors, assumptions } = outcome.value
    return motors.flatMap(({ name, speed: turns, torque, maxTorque, curveEnd, peak }) => {
      if (curveEnd !== undefined) {
        const [found, end] = [turns, curveEnd].map((si) => show(si, 'rotational speed'))
        return [
          at(speed, {
            severity: 'warning',
            message: `At ${show(speed.value, 'speed')} the motor of ${name} turns at ${found}; its torque curve ends at ${end}.`,
            detail: `It must give ${show(torque, 'torque')} there. Whether it can is not known.`,
            todo: 'State the `torque-curve` up to this speed, from the maker of the motor.',
            found: found ?? '',
            limit: `a torque curve up to ${found}`,
            assumptions,
          }),
        ]
      }
      if (maxTorque === undefined || reaches(maxTorque, torque)) return []
      const [found, limit] = [torque, maxTorque].map((si) => show(si, 'torque'))
      const peaks =
        peak && reaches(peak.torque, torque)
          ? `It can give ${show(peak.torque, 'torque')} for ${show(peak.time, 'time')} only.`
          : undefined
      return [
        at(speed, {
          message: `At ${show(speed.value, 'speed')} the motor of ${name} must give ${found}, but can give ${limit}.`,
          ...(peaks !== undefined && { detail: peaks }),
          todo: 'Choose a lower speed, a stronger motor or another gear or propeller.',
          found: found ?? '',
          limit: `at most ${limit}`,
          assumptions,
        }),
      ]
    })
  },
})
