import { at, check, commonPractice } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { factOf } from '../../../../job/model.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { formatShare } from '../../../../quantity/format-measures.ts'
import { prechargingOf } from '../../plans/precharging.ts'

/** The loosest in use: of the voltage of the battery, when the switch closes. */
const loosest = 0.9

export default check({
  id: 'precharge/time',
  severity: 'warning',
  title: 'The switch closes before the capacitance is charged, or never',
  why: 'What is missing to the voltage of the battery comes as a surge when the switch closes. A discharge resistance divides the voltage: with a large precharge resistor it never comes near that of the battery.',
  source: commonPractice(
    'closed at 95 % or after five time constants; 90 % is the loosest in use (common practice, no source)',
  ),
  needs: { resistance: 'precharge.resistance' },
  on: 'precharge',
  fires: `battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 15 mohm }
drive main {
  controller { input: 72..120 V  capacitance: 6.8 mF }
  contactor main-contactor { current: 250 A  voltage: 150 V  makes: 500 A }
  precharge {
    around: main-contactor
    resistance: 47 ohm
    closes-after: 0.5 s
#                 ^^^^^ 79.1 %
  }
}`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 15 mohm }
drive main {
  controller { input: 72..120 V  capacitance: 6.8 mF }
  contactor main-contactor { current: 250 A  voltage: 150 V  makes: 500 A }
  precharge {
    around: main-contactor
    resistance: 47 ohm
    closes-after: 2 s
  }
}`,
  run: ({ resistance }, lookup) => {
    const work = prechargingOf(lookup.block, lookup)
    if (!work.ok) return []
    const { never, end, difference, voltage, closesAfter, assumptions } = work.value
    const [share, after] = [
      factOf(lookup.block, 'precharge.closes-at'),
      factOf(lookup.block, 'precharge.closes-after'),
    ]
    const percent = (of: number) => formatShare(of, 3)
    if (never && share) {
      const found = percent(end)
      return [
        at(share, {
          severity: 'error',
          message: `The switch never closes: the capacitance comes to ${found} at most.`,
          detail:
            end < 1
              ? 'The discharge resistance of the controller divides the voltage.'
              : 'It comes ever nearer to the voltage of the battery, but never to all of it.',
          todo:
            end < 1
              ? 'Choose a smaller precharge resistance, or close at a lower voltage.'
              : 'Close at 95 %, say.',
          found,
          limit: `below ${found}`,
          assumptions,
        }),
      ]
    }
    if (share && after && closesAfter !== undefined && !reaches(after.value, closesAfter)) {
      const [found, limit] = [formatSi(after.value, 'time'), formatSi(closesAfter, 'time', 'metric', 3)]
      return [
        at(after, {
          message: `The time is ${found}; the capacitance needs ${limit} to ${percent(share.value)}.`,
          todo: 'Set a longer time, or choose a smaller precharge resistance.',
          found,
          limit: `at least ${limit}`,
          assumptions,
        }),
      ]
    }
    if (difference === undefined || reaches(1 - difference / voltage, loosest)) return []
    const [found, limit] = [percent(1 - difference / voltage), percent(loosest)]
    return [
      at(share ?? after ?? resistance, {
        message: `The switch closes at ${found} of the voltage of the battery.`,
        detail: `The loosest in use is ${limit}.`,
        todo: 'Close it later, or choose a smaller precharge resistance.',
        found,
        limit: `at least ${limit}`,
        assumptions,
      }),
    ]
  },
})
