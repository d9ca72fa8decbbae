import { at, check } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { leastFault } from '../../../../engineering/electrical/least-fault.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { formatCarried, formatLoad } from '../../../common/amperes.ts'
import { cableNamed } from '../../cable-named.ts'
import { leastFaultSource, shortCircuit } from '../../short-circuit.ts'

export default check({
  id: 'protection/cannot-open',
  severity: 'error',
  title: 'Fuse that a short circuit cannot open',
  why: 'A fuse opens only if the current is well above its rating. A battery that cannot give that much feeds a short circuit until something burns. If the facts of the battery contradict each other, the lower current counts here.',
  source: leastFaultSource,
  on: 'protection',
  needs: { rating: 'protection.rating' },
  fires: `battery house { nominal: 24 V  window: 21..28 V  internal-resistance: 100 mohm }
drive main {
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: controller
    conductor: 95 mm2
    length: 2.5 m
    insulation: 105 degC
    design-current: 200 A
  }
  protection main-fuse {
    rating: 315 A
#           ^^^^^ short circuit
    in: feed
  }
}`,
  quiet: `battery house { nominal: 24 V  window: 21..28 V  internal-resistance: 10 mohm }
drive main {
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: controller
    conductor: 95 mm2
    length: 2.5 m
    insulation: 105 degC
    design-current: 200 A
  }
  protection main-fuse {
    rating: 315 A
    in: feed
  }
}`,
  run: ({ rating }, lookup) => {
    const fault = shortCircuit(lookup)
    if (fault?.lowest === undefined || reaches(fault.lowest, leastFault(rating.value))) return []
    const found = formatCarried(fault.lowest)
    const limit = formatLoad(leastFault(rating.value))
    return [
      at(rating, {
        message: `A short circuit of the battery gives ${found}; the fuse or breaker needs ${limit}.`,
        detail: `It opens for certain from 1.6 times its rating of ${formatSi(rating.value, 'current')} on. With the resistance of the cable the current is lower still.`,
        todo: 'Check the figures of the battery. Or use a smaller rating that still suits the load.',
        found,
        limit: `at least ${limit}`,
        related: cableNamed(lookup),
      }),
    ]
  },
})
