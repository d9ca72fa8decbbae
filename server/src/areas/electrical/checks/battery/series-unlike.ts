import { at, check, commonPractice } from '../../../../checks/check.ts'
import { factOf, type Value } from '../../../../job/model.ts'
import { elide } from '../../../../quantity/elide.ts'
import { idOf } from '../../../../store/block-by-id.ts'
import { joinedInSeries } from '../../../common/battery-string.ts'

const job = (capacity: string) => `battery aft { nominal: 48 V  window: 42..56 V  capacity: 210 Ah }
battery forward {
  nominal: 48 V
  window: 42..56 V
  capacity: ${capacity}
}
cable link { from: aft  to: forward  conductor: 95 mm2  length: 0.4 m  insulation: 105 degC  pole: series }`

export default check({
  id: 'battery/series-unlike',
  severity: 'warning',
  title: 'Unlike batteries in series',
  why: 'The same current flows through all of them. The one of the least capacity is empty and full before the others, and is then driven into reverse or overcharged.',
  source: commonPractice('batteries in series of one type, capacity and age (common practice, no source)'),
  on: 'battery',
  fires: job('100 Ah').replace('100 Ah', '100 Ah\n#           ^^^^^^ 210 Ah'),
  quiet: job('210 Ah'),
  run: (_facts, lookup) => {
    const { block } = lookup
    const joined = joinedInSeries(block, lookup)
    const [head] = joined?.members ?? []
    if (head === undefined || head === idOf(block)) return []
    const first = lookup.blockOf(head)
    const name = elide(first.name ?? 'the first battery')
    const unlike = (
      what: string,
      own: Value<unknown>,
      other: Value<unknown>,
      [found, limit]: readonly string[],
    ) =>
      at(own, {
        message: `Its ${what} is ${found}, but that of ${name}, in series with it, is ${limit}.`,
        todo: 'Put batteries of one type and age in series.',
        ...(found && { found }),
        ...(limit && { limit }),
        related: [{ at: other.at, message: `the ${what} of ${name}` }],
      })
    const [capacity, chemistry, usual, kind] = [
      factOf(block, 'battery.capacity'),
      factOf(block, 'battery.chemistry'),
      factOf(first, 'battery.capacity'),
      factOf(first, 'battery.chemistry'),
    ]
    return [
      ...(capacity && usual && Math.abs(capacity.value - usual.value) > alike * usual.value
        ? [
            unlike(
              'capacity',
              capacity,
              usual,
              [capacity, usual].map(({ value }) => lookup.show(value, 'charge')),
            ),
          ]
        : []),
      ...(chemistry && kind && chemistry.value !== kind.value
        ? [unlike('chemistry', chemistry, kind, [chemistry.value, kind.value])]
        : []),
    ]
  },
})

/** Part by which capacities of one type differ, as makers state them. Common practice, no source. */
const alike = 0.01
