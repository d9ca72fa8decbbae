import { at, check, theJobFile } from '../../../../checks/check.ts'
import { factOf } from '../../../../job/model.ts'
import { holds } from '../../../../quantity/band.ts'
import { elide } from '../../../../quantity/elide.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { nameOfString, stringOf } from '../../../common/battery-string.ts'
import { suppliesOf } from '../../plans/controller-supply.ts'

const volts = (value: number) => formatSi(value, 'voltage')

export default check({
  id: 'cable/controller-input-outside',
  severity: 'error',
  title: 'Battery voltage outside the input range of its controller',
  why: 'Too high a voltage destroys a controller, most often while the battery charges or the motor brakes. Below its lowest voltage it switches off, and the drive stops.',
  source: theJobFile('the input range stated at the controller'),
  on: 'controller',
  needs: { input: 'controller.input' },
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  controller {
    input: 60..100 V
#          ^^^^^^^^^ 108 V
  }
}`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  controller { input: 72..120 V }
}`,
  run: ({ input }, lookup) =>
    suppliesOf(lookup.block, lookup)
      .filter(({ low, high }) => !holds(input.value, low) || !holds(input.value, high))
      .map(({ battery, low, high }) => {
        const found = low === high ? volts(low) : `${volts(low)} to ${volts(high)}`
        const limit = lookup.showBand(input.value, 'voltage')
        const voltage = factOf(battery, 'battery.window') ?? factOf(battery, 'battery.nominal')
        return at(input, {
          message: `The controller accepts ${limit}, but ${elide(nameOfString(stringOf(battery, lookup)))} has ${found}.`,
          todo: 'Choose a controller for the whole voltage window of the battery. Or choose a battery that stays within the input range, also while it charges.',
          found,
          limit,
          ...(voltage && { related: [{ at: voltage.at, message: 'the battery that feeds it' }] }),
        })
      }),
})
