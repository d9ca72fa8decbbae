import { parseThread } from '../engineering/thread.ts'
import { factOf, type Value } from '../job/model.ts'
import { formatSi } from '../quantity/format.ts'
import type { Kind } from '../quantity/kinds.ts'
import type { Lookup } from '../store/lookup.ts'
import type { FactPath } from '../vocabulary/index.ts'
import { commonPractice, type Reported } from './check.ts'
import { between, isOutside, off, practice, type Relation, shown } from './relation.ts'

/** Tightening torque over the cube of the diameter, Pa: class 8.8 takes about 50 MPa, 12.9 about 85 MPa. */
const tightening = { low: 0.5e6, high: 200e6 }

/** A torque beside the thread that takes it. */
function torqueFitsThread(
  value: Value<unknown>,
  torque: number | undefined,
  designation: string | undefined,
  lookup: Lookup,
): readonly Reported[] {
  const thread = designation === undefined ? undefined : parseThread(designation)
  if (torque === undefined || !thread?.ok) return []
  const cube = thread.value.diameter ** 3
  if (!isOutside(torque / cube, tightening)) return []
  const found = shown(lookup, torque, 'torque')
  const limit = lookup.showBand({ low: tightening.low * cube, high: tightening.high * cube }, 'torque')
  return off(value, {
    found,
    limit,
    message: `A tightening torque of ${found} does not suit a thread of ${shown(lookup, thread.value.diameter, 'length')}.`,
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
  broken: (lookup) => {
    const value = factOf(lookup.block, path) as Value<number> | undefined
    if (!value || !isOutside(value.value, { low: -high, high })) return []
    const [found, limit] = [value.value, high].map((si) => shown(lookup, si, kind)) as [string, string]
    return off(value, {
      found,
      limit: `at most ${limit}`,
      message: `An allowance of ${found} is unlikely: more than ${limit}.`,
      detail:
        'The plan would set the machine off by all of it, which may be more than its adjusters can travel.',
    })
  },
})

/** What real couplings, beds and targets keep between their facts. */
export const plausibleAlignment: readonly Relation[] = [
  between({
    id: 'flange-near-shaft-size',
    on: 'coupling',
    fact: 'coupling.flange-diameter',
    kind: 'length',
    other: 'shaft.diameter',
    otherWords: 'the diameter of the shaft',
    rule: 'The flange of a coupling is at most 20 times as large as its shaft.',
    why: 'Flanges have 3 to 5 times the diameter of the shaft, large flexible couplings 10 times. The limit of the gap variation grows with the flange, and slopes are calculated from it.',
    source: practice('20 times'),
    severity: 'warning',
    plan: 'waits',
    sides: (shaft) => ({ high: 20 * shaft }),
    message: (found, of) => `A flange of ${found} on a shaft of ${of} is unlikely.`,
  }),
  {
    id: 'coupling-bolt-torque',
    on: 'coupling',
    facts: ['coupling.bolts'],
    rule: 'The tightening torque of a bolt is 0.5 to 200 MPa times the cube of its diameter.',
    why: 'Bolts of class 8.8 take about 50 MPa, of class 12.9 about 85 MPa.',
    source: practice('0.5 to 200 MPa'),
    severity: 'warning',
    plan: 'goes-on',
    broken: (lookup) => {
      const bolts = factOf(lookup.block, 'coupling.bolts')
      return bolts ? torqueFitsThread(bolts, bolts.value.torque, bolts.value.thread, lookup) : []
    },
  },
  {
    id: 'coupling-bolts-fit',
    on: 'coupling',
    facts: ['coupling.bolts', 'coupling.flange-diameter'],
    rule: 'The bolts of a coupling fit on its flange side by side.',
    why: 'At the rim of the flange their circle is one bolt smaller than the flange.',
    source: commonPractice('geometry'),
    severity: 'warning',
    plan: 'goes-on',
    broken: (lookup) => {
      const bolts = factOf(lookup.block, 'coupling.bolts')
      const flange = factOf(lookup.block, 'coupling.flange-diameter')
      const thread = bolts && parseThread(bolts.value.thread)
      if (!bolts || !flange || !thread?.ok) return []
      const { diameter } = thread.value
      const least = Math.max(2 * diameter, diameter + (bolts.value.count * diameter) / Math.PI)
      if (!isOutside(flange.value, { low: least })) return []
      const [found, limit] = [flange.value, least].map((si) => shown(lookup, si, 'length')) as [
        string,
        string,
      ]
      return off(bolts, {
        found,
        limit: `at least ${limit}`,
        message: `${bolts.value.count} bolts of ${shown(lookup, diameter, 'length')} have no room on a flange of ${found}.`,
        besides: [[flange, 'the diameter of the flange']],
      })
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
    broken: (lookup) => {
      const torque = factOf(lookup.block, 'bed.torque')
      const thread = factOf(lookup.block, 'bed.thread')
      return torque ? torqueFitsThread(torque, torque.value, thread?.value, lookup) : []
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
