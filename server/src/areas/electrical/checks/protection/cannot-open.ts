import { at, check } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { formatCarried, formatLoad } from '../../../common/amperes.ts'
import { cableNamed } from '../../cable-named.ts'
import { leastFaultSource, shortCircuit, whereLeast } from '../../short-circuit.ts'

export default check({
  id: 'protection/cannot-open',
  severity: 'error',
  title: 'Fuse that a short circuit cannot open',
  why: 'A fuse opens only if the current is well above its rating. A battery that cannot give that much, or gives too little through a long cable, feeds a short circuit until something burns. If the facts of the battery contradict each other, the lower current counts here.',
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
    const least = shortCircuit(lookup)?.least
    if (!least || reaches(least.amps, least.opens)) return []
    const found = formatCarried(least.amps)
    const limit = formatLoad(least.opens)
    return [
      at(rating, {
        message: `A short circuit gives ${found} ${whereLeast(least, lookup)}; the fuse or breaker needs ${limit}.`,
        detail: `It opens for certain from 1.6 times its rating of ${formatSi(rating.value, 'current')} on, or a smaller one before it does. The battery counts at the low end of its window, conductors as hot as their insulation allows.`,
        todo: 'Check the figures of the battery and the length of the cables. Or use a smaller rating that still suits the load, or a thicker cable.',
        found,
        limit: `at least ${limit}`,
        related: cableNamed(lookup),
      }),
    ]
  },
})
