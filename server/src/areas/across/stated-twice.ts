import { at, commonPractice, theJobFile } from '../../checks/check.ts'
import { near, type Relation, shown } from '../../checks/relation.ts'
import { factOf } from '../../job/model.ts'
import { elide } from '../../quantity/elide.ts'
import { formatCarried, formatLoad } from '../common/amperes.ts'
import { contradictoryFault } from '../electrical/plans/bank-fault.ts'
import { banksInstead } from '../electrical/plans/bank-named.ts'
import { statedTooLow } from '../electrical/plans/design-current.ts'

/** A log is measured with a caliper or a rule, out of round and askew: this much, or a tenth of what is measured. */
const rough = { least: 2e-3, share: 0.1 }

/** Facts that say the same thing twice, and have to agree. Where they do not, each check uses the figure that is worse for what it checks. */
export const statedTwice: readonly Relation[] = [
  {
    id: 'short-circuit',
    on: 'battery',
    facts: ['battery.short-circuit-current', 'battery.internal-resistance'],
    rule: 'The stated short-circuit current is that of the voltage over the internal resistance, within a factor of 2.',
    why: 'Figures at other temperatures and states of charge differ by less. What must interrupt the current is checked against the higher figure, what must open on it against the lower.',
    source: commonPractice("Ohm's law; a factor of 2: common practice, no source"),
    severity: 'warning',
    broken: ({ block }) => {
      const both = contradictoryFault(block)
      const stated = factOf(block, 'battery.short-circuit-current')
      const resistance = factOf(block, 'battery.internal-resistance')
      if (!both || !stated || !resistance) return []
      const found = formatCarried(both.stated)
      const limit = formatLoad(both.calculated)
      return [
        at(stated, {
          message: `The short-circuit current is stated as ${found}, but the resistance gives ${limit}.`,
          detail: `That is ${both.from}. Until they agree, each check uses the worse of the two.`,
          todo: 'Read both figures on the data sheet of the battery again, and correct the wrong one.',
          found,
          limit: `about ${limit}`,
          related: [{ at: resistance.at, message: 'the internal resistance' }],
        }),
      ]
    },
  },
  {
    id: 'log-clearance',
    on: 'shaft-log',
    facts: ['shaft-log.clearance', 'shaft-log.bore', 'shaft.diameter'],
    rule: 'Two opposite clearances add up to the bore of the log less the diameter of the shaft, within 2 mm or a tenth.',
    why: 'The shaft fills what the clearances leave. One of the three figures is wrong, or belongs to another shaft.',
    source: commonPractice('geometry; 2 mm or a tenth: common practice, no source'),
    severity: 'warning',
    broken: (lookup) => {
      const clearance = factOf(lookup.block, 'shaft-log.clearance')
      const bore = factOf(lookup.block, 'shaft-log.bore')
      const diameter = near(lookup, 'shaft.diameter')
      if (!clearance || !bore || !diameter) return []
      const room = bore.value - diameter.value.nominal
      if (room <= 0) return []
      const sums = clearance.value.flatMap((one, i) =>
        clearance.value
          .slice(i + 1)
          .filter(({ angle }) => Math.cos(angle - one.angle) < -0.999)
          .map(({ value }) => one.value + value),
      )
      const off = (sum: number) => Math.abs(sum - room)
      const worst = sums.reduce((most, sum) => (off(sum) > off(most) ? sum : most), room)
      if (off(worst) <= Math.max(rough.least, rough.share * room)) return []
      const [found, limit] = [worst, room].map((si) => shown(lookup, si, 'length')) as [string, string]
      return [
        at(clearance, {
          message: `Opposite clearances add up to ${found}, but the log leaves ${limit}.`,
          detail: 'The log leaves its bore less the diameter of the shaft.',
          todo: 'Measure the bore and the clearances again, and check their units.',
          found,
          limit: `about ${limit}`,
          related: [
            { at: bore.at, message: 'the bore of the log' },
            { at: diameter.at, message: 'the diameter of the shaft' },
          ],
        }),
      ]
    },
  },
  {
    id: 'cable-current',
    on: 'cable',
    facts: ['cable.design-current', 'motor.power', 'battery.window'],
    rule: 'The stated current of a cable is at least 80 % of what its motors need; a quarter, if other cables share the load.',
    why: 'A cable that is the only way to its motors carries all they need. Cables that share a load each carry a part of it, but hardly less than a quarter. Below that, the cable and its fuse are checked against what the motors need.',
    source: commonPractice('80 % and a quarter: common practice, no source'),
    severity: 'warning',
    broken: (lookup) => {
      const current = factOf(lookup.block, 'cable.design-current')
      const low = current && statedTooLow(lookup.block, lookup)
      if (!low) return []
      const found = shown(lookup, low.stated, 'current')
      const limit = formatLoad(low.calculated.current)
      const share = low.times > 2 ? 'a quarter' : '80 %'
      return [
        at(current, {
          message: `The stated current is ${found}, but what the cable feeds needs ${limit}.`,
          detail: `Current: ${low.calculated.currentFrom}. It counts here, because the stated one is less than ${share} of it.`,
          todo: 'Correct the current, or delete it so that it is calculated.',
          found,
          limit: `at least ${share} of ${limit}`,
          assumptions: low.calculated.assumptions,
        }),
      ]
    },
  },
  {
    id: 'drive-battery',
    on: 'drive',
    facts: ['drive.battery', 'cable.from', 'cable.to'],
    rule: 'The battery that a drive names is one that its cables lead to, or is linked to one.',
    why: 'Cables and fuses are checked against the bank that the cables lead to, the rest of the drive against the one that it names. So one of them is checked against the wrong voltage.',
    source: theJobFile('the cables that lead to the drive'),
    severity: 'warning',
    broken: (lookup) => {
      const battery = factOf(lookup.block, 'drive.battery')
      const [met, more] = banksInstead(lookup.block, lookup)
      if (!battery || !met) return []
      const found = elide(battery.value)
      const limit = more ? 'other batteries' : elide(met.name ?? 'another battery')
      return [
        at(battery, {
          message: `The drive names ${found}, but its cables lead to ${limit}.`,
          detail: `No cable of the job leads from ${found} to this drive, or links the two.`,
          todo: 'Correct `battery`, or the ends of the cables.',
          found,
          limit,
          related: [{ at: met.head, message: 'the battery that the cables lead to' }],
        }),
      ]
    },
  },
]
