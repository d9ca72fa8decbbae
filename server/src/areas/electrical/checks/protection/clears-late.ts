import { at, check } from '../../../../checks/check.ts'
import { isAdiabatic } from '../../../../engineering/electrical/withstand.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { formatCarried } from '../../../common/amperes.ts'
import { latestOpening } from '../../plans/short-circuit-heat.ts'

const job = (
  curve: string,
) => `battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 100 mohm }
drive main {
  load winch { power: 2 kW }
  cable to-winch { from: house  to: winch  conductor: 50 mm2  length: 2 m  insulation: 105 degC }
  protection winch-fuse {
    kind: fuse
    rating: 100 A
    in: to-winch
    at: 0 mm
    clears: ${curve}
  }
}`

export default check({
  id: 'protection/clears-late',
  severity: 'warning',
  title: 'Short circuit that is cleared late',
  why: 'The smallest short circuit is the slowest to clear. Meanwhile the arc burns and the conductor is heated far beyond its rating.',
  source: { basis: 'from memory', text: 'IEC 60364-4-41, 411.3.2: at most 5 s in circuits that feed others' },
  on: 'protection',
  needs: { clears: 'protection.clears' },
  fires: job('400 A 100 s, 3 kA 0.1 s').replace(
    '100 s, 3 kA 0.1 s',
    '100 s, 3 kA 0.1 s\n#           ^^^^^^^^^^^^^^^^^^^^^^^ smallest',
  ),
  quiet: job('400 A 4 s, 3 kA 0.1 s'),
  run: ({ clears }, lookup) => {
    const opening = latestOpening(lookup.block, lookup)
    if (!opening || (opening.time !== undefined && isAdiabatic(opening.time))) return []
    const amps = formatCarried(opening.amps)
    const { time } = opening
    return [
      at(clears, {
        message:
          time === undefined
            ? `The smallest short circuit gives ${amps}: the curve does not show that it opens.`
            : `The smallest short circuit of ${amps} may last ${formatSi(time, 'time')}; at most 5 s is usual.`,
        detail:
          'From one battery at the low end of its window, with hot conductors, as far as it protects. The curve counts with 10 % of tolerance in the current.',
        todo: 'Choose a smaller or a faster fuse that still suits the load. Or use thicker or shorter cables.',
        ...(time !== undefined && { found: formatSi(time, 'time'), limit: 'at most 5 s' }),
      }),
    ]
  },
})
