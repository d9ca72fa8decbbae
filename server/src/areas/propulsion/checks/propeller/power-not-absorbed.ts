import { at, check } from '../../../../checks/check.ts'
import { driveAtTop } from '../../plans/at-block.ts'
import { motorLimitOf } from '../../plans/drive-input.ts'
import { balance } from '../../sources.ts'

/** A share of the rated power that a propeller should take at top speed. Common practice, no source. */
const leastShare = 0.8

export default check({
  id: 'propeller/power-not-absorbed',
  severity: 'warning',
  title: 'Propeller too small for the motor',
  why: 'The motor is at its highest speed before the propeller takes its power. The boat is slower than the motor could make it.',
  source: balance,
  on: 'propeller',
  needs: { pitch: 'propeller.pitch' },
  fires: `hull { calm-water-resistance: 4 kn 0.38 kN, 5 kn 0.62 kN, 6 kn 1.05 kN, 7 kn 2.2 kN, 8 kn 5 kN }
service {
  reserve: 20 %
  point cruise { boat-speed: 5.5 kn  time: 1 h }
}
battery house { nominal: 96 V  capacity: 210 Ah  chemistry: lfp  usable: 80 % }
drive main {
  propeller {
    diameter: 400 mm
    pitch: 260 mm
#          ^^^^^^ only
    blades: 3
    blade-area-ratio: 55 %
  }
  gear { ratio: 2.5 }
  motor turning { power: 15 kW  speed: 1500 rpm  max-speed: 2000 rpm }
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
  run: ({ pitch }, lookup) => {
    const drive = lookup.block.parent
    const top = drive && driveAtTop(drive, lookup.from(drive))
    const limit = drive && motorLimitOf(drive, lookup.from(drive))
    if (!top || !limit?.ok || top.state.limitedBy !== 'speed') return []
    const rated = limit.value.ratedTorque * limit.value.ratedSpeed
    if (top.state.motorPower >= leastShare * rated) return []
    const [found, power] = [top.state.motorPower, rated].map((si) => lookup.show(si, 'power'))
    return [
      at(pitch, {
        message: `The propeller takes only ${found} of the ${power} of the motor.`,
        detail: `At top speed, ${lookup.show(top.boatSpeed, 'speed')}, the motor is at its highest speed, ${lookup.show(top.state.motorSpeed, 'rotational speed')}.`,
        todo: 'Choose more pitch or diameter, or a gear with a lower ratio.',
        found: found ?? '',
        limit: `at least ${lookup.show(leastShare * rated, 'power')}`,
        assumptions: top.assumptions,
      }),
    ]
  },
})
