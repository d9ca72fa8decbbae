import { commonPractice } from '../../checks/check.ts'
import { between, isOutside, near, off, practice, type Relation, shown } from '../../checks/relation.ts'
import { shearStress, torqueOf } from '../../engineering/torsion.ts'
import { childrenOf, factOf } from '../../job/model.ts'
import { formatSi } from '../../quantity/format.ts'
import type { Lookup } from '../../store/lookup.ts'

const geometry = commonPractice('geometry')

/** Torque at the coupling, and so in the shaft, at the rated power of the motor, N·m; losses of a gear are not taken off. Undefined where it does
 * not follow: a gear whose ratio is not stated. */
function shaftTorque(lookup: Lookup): number | undefined {
  const power = near(lookup, 'motor.power')
  const speed = near(lookup, 'motor.speed')
  const ratio = lookup.near('gear') ? near(lookup, 'gear.ratio')?.value : 1
  return power && speed && ratio !== undefined
    ? torqueOf({ power: power.value, speed: speed.value }) * ratio
    : undefined
}

/** What real shaft lines keep between their facts. */
export const plausibleShaft: readonly Relation[] = [
  between({
    id: 'bearing-on-shaft',
    on: 'bearing',
    fact: 'bearing.at',
    kind: 'length',
    other: 'shaft.length',
    otherWords: 'the length of the shaft',
    rule: 'A bearing is no further forward than the shaft is long.',
    why: 'It carries the shaft.',
    source: geometry,
    severity: 'error',
    sides: (shaft) => ({ high: shaft }),
    message: (found, of) => `The bearing is ${found} forward of the end of a shaft that is ${of} long.`,
  }),
  between({
    id: 'bearing-shorter-than-shaft',
    on: 'bearing',
    fact: 'bearing.length',
    kind: 'length',
    other: 'shaft.length',
    otherWords: 'the length of the shaft',
    rule: 'A bearing is no longer than its shaft.',
    why: 'It carries the shaft.',
    source: geometry,
    severity: 'error',
    sides: (shaft) => ({ high: shaft }),
    message: (found, of) => `The bearing is ${found} long, and its shaft ${of}.`,
  }),
  between({
    id: 'bearing-near-shaft-size',
    on: 'bearing',
    fact: 'bearing.bore',
    kind: 'length',
    other: 'shaft.diameter',
    otherWords: 'the diameter of the shaft',
    rule: 'The bore of a bearing is at most a tenth and 1 mm larger than its shaft.',
    why: 'The clearance of a bearing is about a hundredth of its shaft. A bearing that is too small has a check of its own.',
    source: practice('a tenth and 1 mm'),
    severity: 'warning',
    sides: (shaft) => ({ high: 1.1 * shaft + 1e-3 }),
    message: (found, of) => `The bearing has a bore of ${found}; the shaft measures only ${of}.`,
  }),
  between({
    id: 'log-larger-than-shaft',
    on: 'shaft-log',
    fact: 'shaft-log.bore',
    kind: 'length',
    other: 'shaft.diameter',
    otherWords: 'the diameter of the shaft',
    rule: 'The bore of the shaft log is larger than the shaft.',
    why: 'The shaft goes through it.',
    source: geometry,
    severity: 'error',
    sides: (shaft) => ({ low: 1.0001 * shaft }),
    message: (found, of) => `The shaft log has a bore of ${found}; a shaft of ${of} does not go through it.`,
  }),
  {
    id: 'log-clear-of-shaft',
    on: 'shaft-log',
    facts: ['shaft-log.clearance'],
    rule: 'The shaft has clearance in its log all round.',
    why: 'Where it touches, it rubs through the log.',
    source: practice('clear all round'),
    severity: 'warning',
    broken: (lookup) => {
      const clearance = factOf(lookup.block, 'shaft-log.clearance')
      const touching = clearance?.value.filter(({ value }) => value === 0).length ?? 0
      if (!clearance || touching === 0) return []
      const found = shown(lookup, 0, 'length')
      return off(clearance, {
        found,
        limit: `above ${found}`,
        message:
          touching === clearance.value.length
            ? 'The shaft has no clearance in its log at any place.'
            : 'The shaft touches its log: the clearance is zero at one place or more.',
      })
    },
  },
  {
    id: 'seal-has-clamps',
    on: 'seal',
    facts: ['seal.clamps-each-end'],
    rule: 'A bellows has at least one clamp at each end.',
    why: 'Without one it slips off, and water comes in.',
    source: practice('one at least'),
    severity: 'warning',
    broken: ({ block }) => {
      const clamps = factOf(block, 'seal.clamps-each-end')
      return clamps?.value === 0
        ? off(clamps, {
            found: '0',
            limit: 'at least 1',
            message: 'The bellows has no clamps, so nothing holds it on.',
          })
        : []
    },
  },
  between({
    id: 'shaft-slender',
    on: 'shaft',
    fact: 'shaft.length',
    kind: 'length',
    other: 'shaft.diameter',
    otherWords: 'the diameter of the shaft',
    rule: 'A shaft is 3 to 1000 times as long as thick.',
    why: 'It reaches from a propeller outside to a coupling inside.',
    source: practice('3 to 1000 times'),
    severity: 'warning',
    sides: (diameter) => ({ low: 3 * diameter, high: 1000 * diameter }),
    message: (found, of) => `A shaft ${found} long and ${of} thick is unlikely.`,
  }),
  {
    id: 'shaft-bears-torque',
    on: 'shaft',
    facts: ['shaft.diameter', 'motor.power', 'motor.speed', 'gear.ratio'],
    rule: 'The torque of the motor stresses the shaft to at most 200 MPa.',
    why: 'Propeller shafts work at a quarter of that or less. This is no strength calculation: at 200 MPa of shear most shaft steels yield.',
    source: practice('torsion of a round bar; 200 MPa'),
    severity: 'warning',
    broken: (lookup) => {
      const diameter = factOf(lookup.block, 'shaft.diameter')
      const torque = shaftTorque(lookup)
      if (!diameter || torque === undefined) return []
      const stress = shearStress({ torque, diameter: diameter.value.nominal })
      const high = 200e6
      if (!isOutside(stress, { high })) return []
      const least = diameter.value.nominal * (stress / high) ** (1 / 3)
      const [found, limit] = [diameter.value.nominal, least].map((si) => shown(lookup, si, 'length')) as [
        string,
        string,
      ]
      return off(diameter, {
        found,
        limit: `at least ${limit}`,
        message: `A shaft of ${found} is too thin for its motor: ${limit} is the least.`,
        detail: `The torque of the motor is ${shown(lookup, torque, 'torque')}, and so the shear stress ${formatSi(stress, 'pressure')}; ${formatSi(high, 'pressure')} is the most.`,
      })
    },
  },
  between({
    id: 'propeller-larger-than-shaft',
    on: 'propeller',
    fact: 'propeller.diameter',
    kind: 'length',
    other: 'shaft.diameter',
    otherWords: 'the diameter of the shaft',
    rule: 'A propeller is at least 3 times as large as its shaft.',
    why: 'Its hub alone is about twice as thick as the shaft.',
    source: practice('3 times'),
    severity: 'warning',
    sides: (shaft) => ({ low: 3 * shaft }),
    message: (found, of) => `A propeller of ${found} on a shaft of ${of} is unlikely.`,
  }),
  between({
    id: 'propeller-pitch',
    on: 'propeller',
    fact: 'propeller.pitch',
    kind: 'length',
    other: 'propeller.diameter',
    otherWords: 'the diameter of the propeller',
    rule: 'The pitch of a propeller is 0.3 to 2.5 times its diameter.',
    why: 'Published series of propellers have 0.5 to 1.4 times; racing propellers have more.',
    source: practice('0.3 to 2.5 times'),
    severity: 'warning',
    sides: (diameter) => ({ low: 0.3 * diameter, high: 2.5 * diameter }),
    message: (found, of) => `A pitch of ${found} on a diameter of ${of} is unlikely.`,
  }),
  between({
    id: 'log-near-shaft-size',
    on: 'shaft-log',
    fact: 'shaft-log.bore',
    kind: 'length',
    other: 'shaft.diameter',
    otherWords: 'the diameter of the shaft',
    rule: 'The bore of the shaft log is at most 10 times the diameter of the shaft.',
    why: 'The log of most boats is less than twice as wide as its shaft.',
    source: practice('10 times'),
    severity: 'warning',
    sides: (shaft) => ({ high: 10 * shaft }),
    message: (found, of) => `A shaft log with a bore of ${found} is unlikely for a shaft of ${of}.`,
  }),
  {
    id: 'motor-loads-shaft',
    on: 'motor',
    facts: ['motor.power', 'motor.speed', 'gear.ratio', 'shaft.diameter'],
    rule: 'The torque of the motor stresses the shaft to at least 0.05 MPa.',
    why: 'Propeller shafts work at 5 to 50 MPa. With less the power is most often in the wrong unit, and the cables are then sized for too little current.',
    source: practice('torsion of a round bar; 0.05 MPa'),
    severity: 'warning',
    broken: (lookup) => {
      const power = factOf(lookup.block, 'motor.power')
      const diameter = near(lookup, 'shaft.diameter')
      const torque = shaftTorque(lookup)
      // Of several motors each gives a part.
      const { parent } = lookup.block
      const isOnly = !parent || childrenOf(parent, 'motor').length === 1
      if (!power || !diameter || torque === undefined || !isOnly) return []
      const stress = shearStress({ torque, diameter: diameter.value.nominal })
      const low = 0.05e6
      if (!isOutside(stress, { low })) return []
      const [found, limit] = [power.value, (power.value * low) / stress].map((si) =>
        shown(lookup, si, 'power'),
      ) as [string, string]
      return off(power, {
        found,
        limit: `at least ${limit}`,
        message: `A motor of ${found} is unlikely for a shaft of ${shown(lookup, diameter.value.nominal, 'length')}.`,
        detail: `Its torque stresses the shaft to only ${formatSi(stress, 'pressure')}.`,
        besides: [[diameter, 'the diameter of the shaft']],
      })
    },
  },
  {
    id: 'propeller-tip-speed',
    on: 'propeller',
    facts: ['propeller.diameter', 'motor.speed', 'gear.ratio'],
    rule: 'The tips of the propeller move at most 150 m/s at the rated speed of the motor.',
    why: 'Above 40 m/s propellers cavitate; racing propellers reach 100 m/s and more.',
    source: practice('π times diameter times speed; 150 m/s'),
    severity: 'warning',
    broken: (lookup) => {
      const diameter = factOf(lookup.block, 'propeller.diameter')
      const speed = near(lookup, 'motor.speed')
      const ratio = lookup.near('gear') ? near(lookup, 'gear.ratio')?.value : 1
      if (!diameter || !speed || ratio === undefined) return []
      const tips = ((speed.value / ratio) * diameter.value) / 2
      const high = 150
      if (!isOutside(tips, { high })) return []
      const [found, limit] = [diameter.value, (diameter.value * high) / tips].map((si) =>
        shown(lookup, si, 'length'),
      ) as [string, string]
      return off(diameter, {
        found,
        limit: `at most ${limit}`,
        message: `A propeller of ${found} is unlikely at ${shown(lookup, speed.value / ratio, 'rotational speed')}.`,
        besides: [[speed, 'the speed of the motor']],
      })
    },
  },
  {
    id: 'coupling-bears-torque',
    on: 'coupling',
    facts: ['coupling.rated-torque', 'motor.power', 'motor.speed', 'gear.ratio'],
    rule: 'The rated torque of the coupling is at least that of the motor behind its gear.',
    why: 'The coupling carries it all the time. The maker asks for more than this, for shocks and blows.',
    source: commonPractice(
      'torque = power / speed (definition); service factors of the maker are not included',
    ),
    severity: 'warning',
    plan: 'goes-on',
    broken: (lookup) => {
      const rated = factOf(lookup.block, 'coupling.rated-torque')
      const power = near(lookup, 'motor.power')
      const torque = shaftTorque(lookup)
      if (!rated || !power || torque === undefined || !isOutside(rated.value, { low: torque })) return []
      const [found, limit] = [rated.value, torque].map((si) => shown(lookup, si, 'torque')) as [
        string,
        string,
      ]
      return off(rated, {
        found,
        limit: `at least ${limit}`,
        message: `The coupling is rated for ${found}; its motor gives ${limit}.`,
        besides: [[power, 'the power of the motor']],
      })
    },
  },
]
