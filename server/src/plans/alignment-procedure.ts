import { atOneStation } from '../engineering/alignment/feet.ts'
import type { UnitSystem } from '../quantity/kinds.ts'
import { isSaidAsNothing, saidLength, saidLimit } from '../quantity/said.ts'
import type { Correction } from './alignment.ts'
import { sayStep, sayTurns } from './foot-words.ts'
import { listed } from './listed.ts'
import type { CorrectedFoot } from './steps.ts'

/** One piece of the work, and the caution that belongs to it. */
interface Task {
  readonly words: string
  readonly caution?: string
}

/** Nuts of one end are turned no more than this at a time, so that the clamped end is not bent and the machine does not rock. Common practice,
 * no source. */
const flatsInOnePass = 2

/** What is done with the machine in the air. */
const lifted =
  'A machine that is lifted can drop: hold it by jack or hoist, keep hands and fingers from under it.'

const named = (feet: readonly CorrectedFoot[]): string => listed(feet.map(({ name }) => name))

/** Feet told alike together, in their order. */
function alike<T>(feet: readonly CorrectedFoot[], key: (foot: CorrectedFoot) => T): Map<T, CorrectedFoot[]> {
  const groups = new Map<T, CorrectedFoot[]>()
  for (const foot of feet) groups.set(key(foot), [...(groups.get(key(foot)) ?? []), foot])
  return groups
}

/** Stations along the shaft, the furthest from the coupling first: the slope is set there, and the end at the coupling then sets the height. */
function stationsOf(feet: readonly CorrectedFoot[]): readonly (readonly CorrectedFoot[])[] {
  const stations: CorrectedFoot[][] = []
  for (const foot of [...feet].sort((a, b) => Math.abs(b.x) - Math.abs(a.x))) {
    const last = stations.at(-1)
    if (last?.[0] && atOneStation([last[0].x, foot.x])) last.push(foot)
    else stations.push([foot])
  }
  return stations.map((station) => station.sort((a, b) => feet.indexOf(a) - feet.indexOf(b)))
}

/** What holds a foot down. */
const holder = (c: Correction): string =>
  c.adjuster === 'stud-and-nuts' ? 'upper nuts' : c.adjuster === 'shims' ? 'bolts' : 'fastenings'

/** The work that the steps of a plan ask for, in the order that does not rock the machine: one end after the other, sideways last. Empty where
 * there is nothing to be moved. Common practice, no source. */
function tasksOf(c: Correction, system: UnitSystem): readonly Task[] {
  if (c.withheld || c.verdict === 'within') return []
  const raised = c.feet.filter(({ step, moved }) => step.by !== 'none' && !isSaidAsNothing(moved, system))
  const slid = c.feet.filter((foot) => !isSaidAsNothing(foot.slid, system))
  if (raised.length + slid.length === 0) return []
  const byNut = raised.some(({ step }) => step.by === 'nut')
  return [
    {
      words: 'Take the coupling bolts out; see that the machine is supported.',
      caution:
        'Isolate and lock off the drive, prove it dead, and make sure the shaft cannot be turned by the water. The maker of the machine and of the coupling, local rules and licensed people have the last word.',
    },
    ...(byNut
      ? [{ words: 'Mark a flat of each lower nut that is to be turned, to count the flats from.' }]
      : []),
    ...stationsOf(raised).flatMap((station) => heights(station, c, system)),
    ...(slid.length > 0 ? [sideways(slid, c, system)] : []),
    {
      words: `Tighten all ${c.adjuster === 'stud-and-nuts' ? 'nuts' : holder(c)} to the torque that the maker of the machine or of its mounts gives.`,
    },
    { words: readAgain(c, system) },
  ]
}

/** The height of the feet at one station. */
function heights(station: readonly CorrectedFoot[], c: Correction, system: UnitSystem): readonly Task[] {
  const names = named(station)
  const down = station.some(({ moved }) => moved < 0)
  const tighten = { words: `Tighten the ${holder(c)} at ${names} before other feet are touched.` }
  if (!station.some(({ step }) => step.by === 'nut'))
    return [
      {
        words: `At ${names} slacken the ${holder(c)}, and lift no more than it takes; leave the other feet fast.`,
        caution: lifted,
      },
      {
        words: [...alike(station, (foot) => sayStep(foot, c, system))]
          .map(([step, feet]) => `At ${named(feet)} ${step}`)
          .join('; ')
          .concat(
            c.adjuster === 'shims' ? '. Put shims in and take them out with a tool; lower again.' : '.',
          ),
      },
      tighten,
    ]
  return [
    {
      words: `Slacken the upper nuts at ${names}${down ? '' : ', far enough to let the feet up'}; leave the other feet clamped.`,
    },
    {
      words: `At ${[...alike(station, (foot) => turned(foot, system))]
        .map(([turn, feet]) => `${named(feet)} turn the lower nut ${turn}`)
        .join('; at ')}${passes(station)}.`,
      caution: 'Keep hands from under the feet, and the weight on a nut, a jack or a hoist at all times.',
    },
    tighten,
  ]
}

const turned = ({ step, moved }: CorrectedFoot, system: UnitSystem): string =>
  step.by === 'nut'
    ? `${step.move.lowerNut}, seen from above, ${sayTurns(step.move)} (${moved < 0 ? 'down' : 'up'} ${saidLength(Math.abs(moved), system)})`
    : ''

/** How the feet of a station are kept level with each other. */
function passes(station: readonly CorrectedFoot[]): string {
  const most = Math.max(
    ...station.map(({ step }) => (step.by === 'nut' ? 6 * step.move.turns + step.move.flats : 0)),
  )
  const count = Math.ceil(most / flatsInOnePass)
  const inTurn = station.length > 1 ? ', one foot after the other' : ''
  return count > 1 ? `, in ${count} passes of not more than ${flatsInOnePass} flats${inTurn}` : ''
}

function sideways(slid: readonly CorrectedFoot[], c: Correction, system: UnitSystem): Task {
  const by = [
    ...alike(
      slid,
      (foot) => `${saidLength(Math.abs(foot.slid), system)} to ${foot.slid < 0 ? 'port' : 'starboard'}`,
    ),
  ].map(([length, feet]) => `${named(feet)} ${length}`)
  return {
    words: `Sideways last: slacken all ${holder(c)} only so far that the feet slide, and push against a dial with the jacking screws: ${by.join('; ')}. Tighten again: the dial must stand still.`,
    caution: 'Push with screws: under a lever or a hammer the machine jumps.',
  }
}

function readAgain(c: Correction, system: UnitSystem): string {
  const limits = [
    `gap variation at most ${saidLimit(c.gapVariation.limit, system)}`,
    ...(c.offset ? [`offset at most ${saidLimit(c.offset.limit, system)}`] : []),
  ].join(', ')
  return `Read again, everything tight, with the same gauge at the same places, and write it into the log. Allowed: ${limits}; what it should show is said above. Join the coupling only when a reading proves it within.`
}

/** The work, numbered, for a terminal. Empty where nothing is to be moved. */
export function procedureLines(c: Correction, system: UnitSystem): readonly string[] {
  const tasks = tasksOf(c, system)
  if (tasks.length === 0) return []
  return [
    'Work, in this order:',
    ...tasks.flatMap(({ words, caution }, i) => [
      `${String(i + 1).padStart(4)}. ${words}`,
      ...(caution ? [`      Caution: ${caution}`] : []),
    ]),
  ]
}
