import { atHead, check, commonPractice } from '../../../../checks/check.ts'
import { idOf } from '../../../../store/block-by-id.ts'
import type { Lookup } from '../../../../store/lookup.ts'
import {
  type Joined,
  joinedInSeries,
  nameOfString,
  type StringFault,
} from '../../../common/battery-string.ts'

const job = (more: string) => `drive main {
  battery aft { nominal: 48 V  window: 42..56 V }
  battery forward { nominal: 48 V  window: 42..56 V }
  cable link { from: aft  to: forward  conductor: 95 mm2  length: 0.4 m  insulation: 105 degC  pole: series }
${more}}`

/** The battery at which it is said. */
const where = ({ members }: Joined, fault: StringFault) =>
  fault.type === 'branch' || fault.type === 'not-an-end'
    ? fault.battery
    : fault.type === 'several'
      ? fault.batteries[0]
      : members[0]

function words(fault: StringFault, names: string, { blockOf }: Lookup) {
  switch (fault.type) {
    case 'ring':
      return {
        message: `The cables in series join ${names} in a ring: a short circuit.`,
        todo: 'Remove one of them: a string has two free ends.',
      }
    case 'branch':
      return {
        message: `Two cables in series are at the ${fault.pole} of this battery.`,
        todo: 'Join each battery to one next one. Write strings side by side each by itself, from a busbar.',
      }
    case 'several':
      return {
        message: `The batteries ${nameOfString(fault.batteries.map(blockOf))} are in series, and cables of both poles end at each.`,
        todo: 'Write all of them from one battery of the string: there a cable of both poles leaves its two ends.',
      }
    case 'not-an-end':
      return {
        message: `A cable of the ${fault.pole} pole ends at this battery, which is not at that end of ${names}.`,
        todo: `Move it to the battery at the ${fault.pole} end of the string. A cable in series runs from negative to positive.`,
      }
    case 'unread':
      return undefined
  }
}

export default check({
  id: 'battery/series-faulty',
  severity: 'error',
  title: 'Batteries that cannot be in series as written',
  why: 'What joins the two poles of a battery is a short circuit: a ring of cables in series, or a busbar that two batteries in series both lead to. Until that is corrected nothing of the string is known, neither its voltage nor its currents.',
  source: commonPractice('Kirchhoff’s voltage law'),
  on: 'battery',
  fires: job(
    '  cable back { from: forward  to: aft  conductor: 95 mm2  length: 0.4 m  insulation: 105 degC  pole: series }\n',
  ).replace('  battery forward', '# ^^^^^^^^^^^ in a ring\n  battery forward'),
  quiet: job(''),
  run: (_facts, lookup) => {
    const { block } = lookup
    const joined = joinedInSeries(block, lookup)
    if (!joined?.fault || where(joined, joined.fault) !== idOf(block)) return []
    const said = words(joined.fault, nameOfString(joined.members.map(lookup.blockOf)), lookup)
    return said ? [atHead(block, { ...said, detail: 'What follows from the string is not checked.' })] : []
  },
})
