import { at, check, theJobFile } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { gearLoad } from '../../plans/gear-load.ts'

export default check({
  id: 'gear/speed-beyond',
  severity: 'error',
  title: 'Motor speed beyond the gear',
  why: 'Above its highest speed a gear gets too hot, and its bearings and seals are not made for it.',
  source: theJobFile('the max-speed stated at the gear'),
  on: 'gear',
  needs: { most: 'gear.max-speed' },
  fires: `drive main {
  motor turning { power: 15 kW  speed: 1500 rpm  max-speed: 2500 rpm }
  gear {
    ratio: 2.5
    max-speed: 2000 rpm
#              ^^^^^^^^ the motor turns at up to
  }
}`,
  quiet: `drive main {
  motor turning { power: 15 kW  speed: 1500 rpm  max-speed: 2500 rpm }
  gear { ratio: 2.5  max-speed: 2600 rpm }
}`,
  run: ({ most }, lookup) => {
    const load = gearLoad(lookup.block, lookup)
    if (!load || reaches(most.value, load.speed)) return []
    const found = lookup.show(load.speed, 'rotational speed')
    const limit = lookup.show(most.value, 'rotational speed')
    return [
      at(most, {
        message: `The gear is for ${limit}, but the motor turns at up to ${found}.`,
        todo: 'Choose a gear for this speed, or limit the speed in the controller.',
        found,
        limit: `at most ${limit}`,
      }),
    ]
  },
})
