import { parseThread } from '../engineering/thread.ts'
import { shearStress, torqueOf } from '../engineering/torsion.ts'
import { factOf, type Value } from '../job/model.ts'
import { formatSi } from '../quantity/format.ts'
import type { Kind } from '../quantity/kinds.ts'
import type { FactPath } from '../vocabulary/index.ts'
import { type Context, commonPractice, type Reported } from './check.ts'
import { between, isOutside, near, off, practice, type Relation, shown } from './relation.ts'

const geometry = commonPractice('geometry')

/** Torque at the coupling, and so in the shaft, at the rated power of the motor, N·m; losses of a gear are not taken off. Undefined where it does
 * not follow: a gear whose ratio is not stated. */
function shaftTorque(context: Context): number | undefined {
  const power = near(context, 'motor.power')
  const speed = near(context, 'motor.speed')
  const ratio = context.near('gear') ? near(context, 'gear.ratio')?.value : 1
  return power && speed && ratio !== undefined
    ? torqueOf({ power: power.value, speed: speed.value }) * ratio
    : undefined
}

/** Tightening torque over the cube of the diameter, Pa: class 8.8 takes about 50 MPa, 12.9 about 85 MPa. */
const tightening = { low: 0.5e6, high: 200e6 }

/** A torque beside the thread that takes it. */
function torqueFitsThread(
  value: Value<unknown>,
  torque: number | undefined,
  designation: string | undefined,
  context: Context,
): readonly Reported[] {
  const thread = designation === undefined ? undefined : parseThread(designation)
  if (torque === undefined || !thread?.ok) return []
  const cube = thread.value.diameter ** 3
  if (!isOutside(torque / cube, tightening)) return []
  const found = shown(context, torque, 'torque')
  const limit = context.showBand({ low: tightening.low * cube, high: tightening.high * cube }, 'torque')
  return off(value, {
    found,
    limit,
    message: `A tightening torque of ${found} does not suit a thread of ${shown(context, thread.value.diameter, 'length')}.`,
    detail: `Threads of this size take ${limit}, from soft to the strongest steel.`,
  })
}

/** An allowance far above what machines and hulls move. */
const allowance = (on: 'target' | 'foot', path: FactPath, kind: Kind, high: number): Relation => ({
  id: path,
  on,
  facts: [path],
  rule: `It is at most ${formatSi(high, kind)}, either way.`,
  why: 'Machines grow, and hulls give, by tenths of a millimetre. The plan would set the machine off by the whole figure, which may be more than its adjusters can travel. So it gives no steps.',
  source: practice(formatSi(high, kind)),
  severity: 'warning',
  plan: 'waits',
  broken: (context) => {
    const value = factOf(context.block, path) as Value<number> | undefined
    if (!value || !isOutside(value.value, { low: -high, high })) return []
    const [found, limit] = [value.value, high].map((si) => shown(context, si, kind)) as [string, string]
    return off(value, {
      found,
      limit: `at most ${limit}`,
      message: `An allowance of ${found} is unlikely: more than ${limit}.`,
      detail:
        'The plan would set the machine off by all of it, which may be more than its adjusters can travel.',
    })
  },
})

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
    broken: (context) => {
      const clearance = factOf(context.block, 'shaft-log.clearance')
      const touching = clearance?.value.filter(({ value }) => value === 0).length ?? 0
      if (!clearance || touching === 0) return []
      const found = shown(context, 0, 'length')
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
    broken: (context) => {
      const diameter = factOf(context.block, 'shaft.diameter')
      const torque = shaftTorque(context)
      if (!diameter || torque === undefined) return []
      const stress = shearStress({ torque, diameter: diameter.value.nominal })
      const high = 200e6
      if (!isOutside(stress, { high })) return []
      const least = diameter.value.nominal * (stress / high) ** (1 / 3)
      const [found, limit] = [diameter.value.nominal, least].map((si) => shown(context, si, 'length')) as [
        string,
        string,
      ]
      return off(diameter, {
        found,
        limit: `at least ${limit}`,
        message: `A shaft of ${found} is too thin for its motor: ${limit} is the least.`,
        detail: `The torque of the motor is ${shown(context, torque, 'torque')}, and so the shear stress ${formatSi(stress, 'pressure')}; ${formatSi(high, 'pressure')} is the most.`,
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
    broken: (context) => {
      const rated = factOf(context.block, 'coupling.rated-torque')
      const power = near(context, 'motor.power')
      const torque = shaftTorque(context)
      if (!rated || !power || torque === undefined || !isOutside(rated.value, { low: torque })) return []
      const [found, limit] = [rated.value, torque].map((si) => shown(context, si, 'torque')) as [
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
  {
    id: 'coupling-bolt-torque',
    on: 'coupling',
    facts: ['coupling.bolts'],
    rule: 'The tightening torque of a bolt is 0.5 to 200 MPa times the cube of its diameter.',
    why: 'Bolts of class 8.8 take about 50 MPa, of class 12.9 about 85 MPa.',
    source: practice('0.5 to 200 MPa'),
    severity: 'warning',
    plan: 'goes-on',
    broken: (context) => {
      const bolts = factOf(context.block, 'coupling.bolts')
      return bolts ? torqueFitsThread(bolts, bolts.value.torque, bolts.value.thread, context) : []
    },
  },
  {
    id: 'bed-torque',
    on: 'bed',
    facts: ['bed.torque', 'bed.thread'],
    rule: 'The tightening torque of a stud is 0.5 to 200 MPa times the cube of its diameter.',
    why: 'As for the bolts of a coupling.',
    source: practice('0.5 to 200 MPa'),
    severity: 'warning',
    plan: 'goes-on',
    broken: (context) => {
      const torque = factOf(context.block, 'bed.torque')
      const thread = factOf(context.block, 'bed.thread')
      return torque ? torqueFitsThread(torque, torque.value, thread?.value, context) : []
    },
  },
  ...(
    [
      'target.shaft-droop',
      'target.afloat-up',
      'target.afloat-to-starboard',
      'target.maker-up',
      'target.maker-to-starboard',
    ] as const
  ).map((path) => allowance('target', path, 'length', 5e-3)),
  ...(
    [
      'target.shaft-slope',
      'target.afloat-slope-up',
      'target.afloat-slope-to-starboard',
      'target.maker-slope-up',
      'target.maker-slope-to-starboard',
    ] as const
  ).map((path) => allowance('target', path, 'angle', 20e-3)),
  allowance('foot', 'foot.growth', 'length', 3e-3),
]
