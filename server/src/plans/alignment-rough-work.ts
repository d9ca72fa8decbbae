import type { FootCorrection } from '../engineering/alignment/feet.ts'
import type { UnitSystem } from '../quantity/kinds.ts'
import { saidRoom, saidRough } from '../quantity/said.ts'
import type { Correction } from './alignment.ts'
import { roughlyAligned } from './alignment-rough.ts'
import { isolate, part, secureShaft, type Task } from './alignment-tasks.ts'
import { alike, holder, named, onStuds } from './feet-together.ts'
import { listed } from './listed.ts'
import { sayAim } from './next-reading-words.ts'

/** Farther (m) than any foot goes. */
const far = 100

const isNothing = (said: string): boolean => Number.parseFloat(said) === 0

/** `up 15.0 mm and 12.0 mm to starboard`. */
function sayWay({ vertical, horizontal }: FootCorrection, system: UnitSystem): string {
  const [height, across] = [vertical.value, horizontal.value].map((by) => saidRough(Math.abs(by), system))
  return (
    [
      ...(height && !isNothing(height) ? [`${vertical.value < 0 ? 'down' : 'up'} ${height}`] : []),
      ...(across && !isNothing(across)
        ? [`${across} to ${horizontal.value < 0 ? 'port' : 'starboard'}`]
        : []),
    ].join(' and ') || 'stays'
  )
}

/** What the job states of the room of a foot, where that is less than it needs: `fwd-port can go up 3.0 mm and needs 12.0 mm`. */
function lacks(foot: FootCorrection, c: Correction, system: UnitSystem): readonly string[] {
  const stand = c.hardware?.feet[c.feet.findIndex(({ name }) => name === foot.name)]
  const by = foot.vertical.value
  const down = c.adjuster === 'shims' ? Math.min(stand?.down ?? far, stand?.pack ?? far) : stand?.down
  const ways = [
    { way: 'up', can: stand?.up, needs: by },
    { way: 'down', can: down, needs: -by },
    { way: 'sideways', can: stand?.sideways, needs: Math.abs(foot.horizontal.value) },
  ]
  return ways.flatMap(({ way, can, needs }) =>
    can !== undefined && needs > can + 1e-9
      ? [`${foot.name} can go ${way} ${saidRough(can, system)} and needs ${saidRoom(needs, system)}`]
      : [],
  )
}

/** How the machine is kept from dropping on its way. */
function howCarried(c: Correction): string {
  const studs = onStuds(c)
  const goes = (way: number) => c.feet.some(({ vertical }) => vertical.value * way > roughlyAligned / 2)
  return [
    goes(1) &&
      (studs
        ? 'going up, lift a little and run the lower nuts up after it'
        : 'going up, lift a little and put packing under it'),
    goes(-1) &&
      (studs
        ? 'going down, take the weight, back the lower nuts off by a turn at most, lower onto them, and so on'
        : 'going down, take the weight, take out one piece of packing, lower, and so on'),
    c.feet.some(({ horizontal }) => Math.abs(horizontal.value) > roughlyAligned / 2) &&
      'sideways, slide it on its feet with the jacking screws, not hanging',
  ]
    .filter((one) => one !== false)
    .join('; ')
}

/** Rough alignment, its own stage with its own way of measuring. Common practice, no source. */
export function roughTasks(c: Correction, system: UnitSystem): readonly Task[] {
  if (c.feet.length === 0) return []
  const figures: Task = {
    words:
      'Check the figures first: gaps and offsets, diameters, places of the feet. A wrong figure looks like this.',
  }
  const lacking = c.feet.flatMap((foot) => lacks(foot, c, system))
  if (lacking.length > 0)
    return [
      figures,
      {
        words: `Where they are right, the bed has no room for it: ${lacking.join('; ')}. Change studs, mounts, holes or bed first, correct the job, and plan again.`,
      },
    ]
  const aim = sayAim(c, system)
  const highest = Math.max(...c.feet.map(({ vertical }) => vertical.value))
  const lowest = Math.min(...c.feet.map(({ vertical }) => vertical.value))
  const studs = onStuds(c)
  const across = Math.max(...c.feet.map(({ horizontal }) => Math.abs(horizontal.value)))
  const room = [
    ...(highest > 0 ? [`${saidRough(highest, system)} up`] : []),
    ...(lowest < 0 ? [`${saidRough(-lowest, system)} down`] : []),
    `${saidRough(across, system)} sideways`,
  ].filter((said) => !isNothing(said))
  return [
    { words: `${figures.words} Where they are right, align roughly:` },
    isolate,
    secureShaft,
    part,
    {
      words: `Take the weight of the machine on a jack or a hoist near its centre of gravity. See that ${studs ? 'the thread of the studs and their holes' : 'the fastenings and their holes'} leave room enough: ${listed(room)}.`,
      caution: 'A lifted machine can drop: keep hands and fingers from under it.',
    },
    {
      words: `Slacken all ${holder(c)} as far as the move needs, and never take them off. Move the machine little by little, one end after the other; ${howCarried(c)}:`,
      lines: [...alike(c.feet, (foot) => sayWay(foot, system))].map(([way, feet]) => `${named(feet)} ${way}`),
    },
    {
      words: `Measure by eye: a straightedge over both rims, at the top and at the side; a taper gauge or a rule between the faces. Go on until the rims differ by less than ${saidRough(roughlyAligned, system)} everywhere and the gap by less than that all round${aim === undefined ? '' : `, counted from where it is to stand: ${aim}`}.`,
    },
    {
      words: `Tighten the ${holder(c)}, take a new reading and write it into the log. The fine steps come from that.`,
      caution: 'Do not join the coupling yet.',
    },
  ]
}
