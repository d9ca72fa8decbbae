import { at, check } from '../../../../checks/check.ts'
import { driveAtTop } from '../../plans/at-block.ts'
import { motorLimitOf } from '../../plans/drive-input.ts'
import { balance } from '../../sources.ts'

/** A motor that gets so near to its rated speed gives nearly all of its power. Common practice, no source. */
const nearRated = 0.95

export default check({
  id: 'propeller/too-large',
  severity: 'warning',
  title: 'Propeller too large for the motor',
  why: 'The propeller needs the full torque of the motor before the motor is at its rated speed. Its power cannot be used, and it runs hot at full torque.',
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
    diameter: 600 mm
    pitch: 600 mm
#          ^^^^^^ holds the motor
    blades: 4
    blade-area-ratio: 60 %
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
  run: ({ pitch }, lookup) => {
    const drive = lookup.block.parent
    const top = drive && driveAtTop(drive, lookup.from(drive))
    const limit = drive && motorLimitOf(drive, lookup.from(drive))
    if (!top || !limit?.ok || top.state.limitedBy !== 'torque') return []
    const { motorSpeed, motorPower } = top.state
    if (motorSpeed >= nearRated * limit.value.ratedSpeed) return []
    const [found, rated] = [motorSpeed, limit.value.ratedSpeed].map((si) =>
      lookup.show(si, 'rotational speed'),
    )
    return [
      at(pitch, {
        message: `The propeller holds the motor at ${found}; its rated speed is ${rated}.`,
        detail: `At top speed, ${lookup.show(top.boatSpeed, 'speed')}, the motor gives ${lookup.show(motorPower, 'power')} at its full torque.`,
        todo: 'Choose less pitch or diameter, or a gear with a higher ratio.',
        found: found ?? '',
        limit: `at least ${rated}`,
        assumptions: top.assumptions,
      }),
    ]
  },
})
