import { check, theJobFile } from '../../../../checks/check.ts'
import { beyondPeak } from '../../beyond-peak.ts'

export default check({
  id: 'coupling/peak-torque-beyond',
  severity: 'error',
  title: 'Peak torque of the motor beyond the coupling',
  why: 'The controller lets the motor give its peak torque when the boat starts, stops or turns the propeller over. Behind a gear the coupling takes it times the ratio, and a coupling that is not made for it slips or breaks.',
  source: theJobFile('the peak-torque stated at the coupling, else its rated-torque'),
  on: 'coupling',
  plan: 'goes-on',
  wants: { peak: 'coupling.peak-torque', rated: 'coupling.rated-torque' },
  fires: `drive main {
  motor turning { power: 15 kW  speed: 1500 rpm  peak-torque: 200 N·m  peak-time: 60 s }
  gear { ratio: 2.5 }
  coupling {
    rated-torque: 400 N·m
    peak-torque: 450 N·m
#                ^^^^^^^ 500 N·m
  }
}`,
  quiet: `drive main {
  motor turning { power: 15 kW  speed: 1500 rpm  peak-torque: 200 N·m  peak-time: 60 s }
  gear { ratio: 2.5 }
  coupling { rated-torque: 400 N·m  peak-torque: 800 N·m }
}`,
  run: ({ peak, rated }, lookup) => beyondPeak(peak, rated, lookup),
})
