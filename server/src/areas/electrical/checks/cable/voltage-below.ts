import { at, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { chargedAsUsual, onCharge } from '../../../common/string-facts.ts'
import { highestOf } from '../../plans/cable-protection.ts'

export default check({
  id: 'cable/voltage-below',
  severity: 'error',
  title: 'Insulation rated below the voltage',
  why: 'Insulation fails slowly above its rated voltage, and a fault then has the whole bank behind it. Between the phases a controller makes pulses as high as the bank.',
  source: published(
    'the rated voltage of a cable is the highest it is made for (IEC 60502 and UL 1426, from memory); ABYC E-11 excerpts ask for 600 V insulation',
  ),
  on: 'cable',
  needs: { voltage: 'cable.voltage' },
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  controller { input: 72..120 V }
  cable feed {
    from: house
    to: controller
    voltage: 48 V
#            ^^^^ 108 V
  }
}`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  controller { input: 72..120 V }
  cable feed {
    from: house
    to: controller
    voltage: 600 V
  }
}`,
  run: ({ voltage }, lookup) => {
    const { block } = lookup
    const highest = highestOf(block, lookup, onCharge)
    if (highest === undefined || reaches(voltage.value, highest)) return []
    const [found, limit] = [voltage.value, highest].map((volts) => formatSi(volts, 'voltage')) as [
      string,
      string,
    ]
    return [
      at(voltage, {
        message: `The insulation is rated for ${found}; its circuit reaches ${limit}.`,
        todo: 'Use a cable with insulation for this voltage.',
        found,
        limit: `at least ${limit}`,
        ...(highestOf(block, lookup) !== highest && { assumptions: [chargedAsUsual] }),
      }),
    ]
  },
})
