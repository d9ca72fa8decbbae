import { at, atHead, check, commonPractice } from '../../../../checks/check.ts'
import { type Block, factOf } from '../../../../job/model.ts'
import { elide } from '../../../../quantity/elide.ts'
import { formatSi } from '../../../../quantity/format.ts'
import type { Lookup } from '../../../../store/lookup.ts'
import { nameOfString, stringOf } from '../../../common/battery-string.ts'
import { readable } from '../../../common/stated-fact.ts'
import { highestOfString, lowOf, nominalOf } from '../../../common/string-facts.ts'
import { besideBefore } from '../../plans/joined-banks.ts'

const job = (second: string) => `battery aft { nominal: 48 V  window: 42..56 V }
battery forward { ${second} }
busbar bus { }
cable one { from: aft  to: bus  conductor: 95 mm2  length: 1 m  insulation: 105 degC }
cable other { from: forward  to: bus  conductor: 95 mm2  length: 1 m  insulation: 105 degC }`

/** Part by which nominal voltages of batteries side by side differ at most: 12.8 V and 12 V go by one name. Common practice, no source. */
const alike = 0.1

interface Voltages {
  readonly nominal: number | undefined
  readonly low: number | undefined
  readonly high: number | undefined
}

const voltagesOf = (string: readonly Block[]): Voltages => {
  const low = lowOf(string)
  return { nominal: nominalOf(string), low, high: low === undefined ? undefined : highestOfString(string) }
}

/** Two voltages that cannot be those of one bank, V. */
function unlike(one: Voltages, other: Voltages): readonly [number, number] | undefined {
  const { nominal: a, low: lowA, high: highA } = one
  const { nominal: b, low: lowB, high: highB } = other
  if (a !== undefined && b !== undefined) return Math.abs(a - b) > alike * Math.max(a, b) ? [a, b] : undefined
  if (highA !== undefined && lowB !== undefined && highA < lowB) return [highA, lowB]
  return lowA !== undefined && highB !== undefined && lowA > highB ? [lowA, highB] : undefined
}

const chemistryOf = (string: readonly Block[]) =>
  string.flatMap((battery) => factOf(battery, 'battery.chemistry') ?? [])[0]

const findingsOf = (string: readonly Block[], other: readonly Block[], lookup: Lookup) => {
  const [own, name] = [nameOfString(string), nameOfString(other)].map((words) => elide(words)) as [
    string,
    string,
  ]
  const related = other[0] ? [{ at: other[0].head, message: 'the other' }] : []
  const volts = unlike(voltagesOf(string), voltagesOf(other))
  if (volts) {
    const [found, limit] = volts.map((value) => formatSi(value, 'voltage')) as [string, string]
    return [
      atHead(lookup.block, {
        message: `${own} has ${found}, but ${name}, side by side with it, has ${limit}.`,
        todo: 'Put batteries of one voltage side by side. Or join the two by a converter.',
        found,
        limit,
        related,
      }),
    ]
  }
  const [kind, usual] = [chemistryOf(string), chemistryOf(other)]
  if (!kind || !usual || kind.value === usual.value) return []
  return [
    at(kind, {
      severity: 'warning',
      message: `${own} is ${kind.value}, but ${name}, side by side with it, is ${usual.value}.`,
      detail: 'Their voltages differ with the state of charge, so that one feeds the other.',
      todo: 'Put batteries of one type side by side. Or join the two by a converter.',
      found: kind.value,
      limit: usual.value,
      related,
    }),
  ]
}

export default check({
  id: 'battery/side-by-side-unlike',
  severity: 'error',
  title: 'Batteries of unlike voltage side by side',
  why: 'As soon as the two are joined, the higher one drives a current into the lower one that only their resistances limit: cables burn, and the lower one is overcharged.',
  source: commonPractice(
    'one voltage, chemistry and age for batteries side by side (common practice, no source)',
  ),
  on: 'battery',
  fires: job('nominal: 24 V  window: 21..28 V').replace('busbar', '#<- 24 V\nbusbar'),
  quiet: job('nominal: 48 V  window: 44..54 V'),
  run: (_facts, lookup) => {
    const { block } = lookup
    const before = besideBefore(block, lookup)
    if (before === undefined) return []
    const other = lookup.blockOf(before)
    return (
      readable(() => findingsOf(stringOf(block, lookup), stringOf(other, lookup.from(other)), lookup)) ?? []
    )
  },
})
