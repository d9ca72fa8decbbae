import { factOf } from '../../job/model.ts'
import { suppliesOf } from '../../plans/controller-supply.ts'
import { holds } from '../../quantity/band.ts'
import { formatSi } from '../../quantity/format.ts'
import { at, check, theJobFile } from '../check.ts'

const volts = (value: number) => formatSi(value, 'voltage')

export default check({
  id: 'cable/controller-input-outside',
  severity: 'error',
  title: 'Battery outside what its controller accepts',
  why: 'Above its highest input voltage a controller is destroyed, most often on charge or when the motor brakes; below its lowest it switches off, and the drive is lost.',
  source: theJobFile('the input that the controller states, as its maker gives it'),
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
  run: ({ input }, context) =>
    suppliesOf(context.block, context)
      .filter(({ low, high }) => !holds(input.value, low) || !holds(input.value, high))
      .map(({ battery, low, high }) => {
        const found = low === high ? volts(low) : `${volts(low)} to ${volts(high)}`
        const limit = context.showBand(input.value, 'voltage')
        const said = factOf(battery, 'battery.window') ?? factOf(battery, 'battery.nominal')
        return at(input, {
          message: `The controller accepts ${limit}, and ${battery.name ?? 'the battery'} has ${found}.`,
          todo: 'Take a controller for the whole window of the battery, or a battery that stays inside what the controller accepts, on charge too. The battery stays live: work for a licensed person.',
          found,
          limit,
          ...(said && { related: [{ at: said.at, message: 'the battery that feeds it' }] }),
        })
      }),
})
