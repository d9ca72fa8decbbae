import { check, theJobFile } from '../../../../checks/check.ts'
import { beyondPeak } from '../../beyond-peak.ts'

export default check({
  id: 'gear/peak-torque-beyond',
  severity: 'error',
  title: 'Peak torque of the motor beyond the gear',
  why: 'The controller lets the motor give its peak torque when the boat starts, stops or turns the propeller over. A gear that is not made for it breaks a tooth.',
  source: theJobFile('the peak-torque stated at the gear, else its rated-torque'),
  on: 'gear',
  wants: { peak: 'gear.peak-torque', rated: 'gear.rated-torque' },
  fires: `drive main {
  motor turning { power: 15 kW  speed: 1500 rpm  peak-torque: 200 N·m  peak-time: 60 s }
  gear {
    ratio: 2.5
    rated-torque: 120 N·m
    peak-torque: 180 N·m
#                ^^^^^^^ 200 N·m
  }
}`,
  quiet: `drive main {
  motor turning { power: 15 kW  speed: 1500 rpm  peak-torque: 200 N·m  peak-time: 60 s }
  gear { ratio: 2.5  rated-torque: 120 N·m  peak-torque: 220 N·m }
}`,
  run: ({ peak, rated }, lookup) => beyondPeak(peak, rated, lookup),
})
