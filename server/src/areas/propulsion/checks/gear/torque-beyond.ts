import { at, check, theJobFile } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { gearLoad } from '../../plans/gear-load.ts'

export default check({
  id: 'gear/torque-beyond',
  severity: 'error',
  title: 'Motor torque beyond the gear',
  why: 'The motor gives its full torque at bollard and whenever the propeller is held. A gear that is not made for it wears or breaks.',
  source: theJobFile('the rated-torque stated at the gear'),
  on: 'gear',
  needs: { most: 'gear.rated-torque' },
  fires: `drive main {
  motor turning { power: 15 kW  speed: 1500 rpm  max-speed: 2500 rpm }
  gear {
    ratio: 2.5
    rated-torque: 80 N·m
#                 ^^^^^^ the motor gives
  }
}`,
  quiet: `drive main {
  motor turning { power: 15 kW  speed: 1500 rpm  max-speed: 2500 rpm }
  gear { ratio: 2.5  rated-torque: 120 N·m }
}`,
  run: ({ most }, lookup) => {
    const load = gearLoad(lookup.block, lookup)
    if (!load || reaches(most.value, load.torque)) return []
    const found = lookup.show(load.torque, 'torque')
    const limit = lookup.show(most.value, 'torque')
    return [
      at(most, {
        message: `The gear is for ${limit}, but the motor gives ${found}.`,
        todo: 'Choose a gear for this torque, or limit the current of the controller.',
        found,
        limit: `at most ${limit}`,
      }),
    ]
  },
})
