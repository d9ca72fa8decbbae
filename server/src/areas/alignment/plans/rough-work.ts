import type { FootCorrection } from '../../../engineering/alignment/feet.ts'
import { formatRoom, formatRough } from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import { canDrop } from '../../common/dangers.ts'
import { listed } from '../../common/listed.ts'
import type { Correction } from './correction.ts'
import { alike, holder, named, onStuds } from './feet-together.ts'
import { formatAim } from './next-reading-words.ts'
import { roughlyAligned } from './rough.ts'
import { isolate, part, secureShaft, type Task } from './tasks.ts'

/** Farther (m) than any foot goes. */
const farthest = 100

const isNothing = (amount: string): boolean => Number.parseFloat(amount) === 0

/** `up 15.0 mm and 12.0 mm to starboard`. */
function formatWay({ vertical, horizontal }: FootCorrection, system: UnitSystem): string {
  const [height, across] = [vertical.value, horizontal.value].map((by) => formatRough(Math.abs(by), system))
  return (
    [
      ...(height && !isNothing(height) ? [`${vertical.value < 0 ? 'down' : 'up'} ${height}`] : []),
      ...(across && !isNothing(across)
        ? [`${across} to ${horizontal.value < 0 ? 'port' : 'starboard'}`]
        : []),
    ].join(' and ') || 'stays'
  )
}

/** What the job states of the room of a foot, where that is less than it needs: `fwd-port can go up 3.0 mm but needs 12.0 mm`. */
function lacks(foot: FootCorrection, c: Correction, system: UnitSystem): readonly string[] {
  const stand = c.hardware?.feet[c.feet.findIndex(({ name }) => name === foot.name)]
  const by = foot.vertical.value
  const down =
    c.adjuster === 'shims' ? Math.min(stand?.down ?? farthest, stand?.pack ?? farthest) : stand?.down
  const ways = [
    { way: 'up', can: stand?.up, needs: by },
    { way: 'down', can: down, needs: -by },
    { way: 'sideways', can: stand?.sideways, needs: Math.abs(foot.horizontal.value) },
  ]
  return ways.flatMap(({ way, can, needs }) =>
    can !== undefined && needs > can + 1e-9
      ? [`${foot.name} can go ${way} ${formatRough(can, system)} but needs ${formatRoom(needs, system)}`]
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
        ? 'To go up, lift a little and run the lower nuts up after it'
        : 'To go up, lift a little and put packing under it'),
    goes(-1) &&
      (studs
        ? 'To go down, take the weight, back the lower nuts off by a turn at most, lower onto them, and repeat'
        : 'To go down, take the weight, take out one piece of packing, lower, and repeat'),
    c.feet.some(({ horizontal }) => Math.abs(horizontal.value) > roughlyAligned / 2) &&
      'To go sideways, slide it on its feet with the jacking screws, never while it hangs',
  ]
    .filter((one) => one !== false)
    .join('. ')
}

/** Rough alignment, its own stage with its own way of measuring. Common practice, no source. */
export function roughTasks(c: Correction, system: UnitSystem): readonly Task[] {
  if (c.feet.length === 0) return []
  const figures: Task = {
    words:
      'Check the figures first: gaps, offsets, diameters and places of the feet. An error this large is often a wrong figure.',
  }
  const lacking = c.feet.flatMap((foot) => lacks(foot, c, system))
  if (lacking.length > 0)
    return [
      figures,
      {
        words: `If they are right, the bed has no room for the move: ${lacking.join('; ')}. First change studs, mounts, holes or bed. Then correct the job and plan again.`,
      },
    ]
  const aim = formatAim(c, system)
  const highest = Math.max(...c.feet.map(({ vertical }) => vertical.value))
  const lowest = Math.min(...c.feet.map(({ vertical }) => vertical.value))
  const studs = onStuds(c)
  const across = Math.max(...c.feet.map(({ horizontal }) => Math.abs(horizontal.value)))
  const room = [
    ...(highest > 0 ? [`${formatRough(highest, system)} up`] : []),
    ...(lowest < 0 ? [`${formatRough(-lowest, system)} down`] : []),
    `${formatRough(across, system)} sideways`,
  ].filter((amount) => !isNothing(amount))
  return [
    { words: `${figures.words} If they are right, align roughly:` },
    isolate,
    secureShaft,
    part,
    {
      words: `Take the weight of the machine on a jack or a hoist near its centre of gravity. Check that ${studs ? 'the thread of the studs and their holes' : 'the fastenings and their holes'} leave enough room: ${listed(room)}.`,
      caution: canDrop,
    },
    {
      words: `Slacken all ${holder(c)} as far as the move needs, but never take them off. Move the machine a little at a time, one end after the other. ${howCarried(c)}. The feet go:`,
      lines: [...alike(c.feet, (foot) => formatWay(foot, system))].map(
        ([way, feet]) => `${named(feet)} ${way}`,
      ),
    },
    {
      words: `Lay a straightedge across both rims, at the top and at the side. Put a taper gauge or a rule between the faces. Go on until the rims differ by less than ${formatRough(roughlyAligned, system)} everywhere, and the gap by less than that all round${aim === undefined ? '' : `, measured from the target: ${aim}`}.`,
    },
    {
      words: `Tighten the ${holder(c)}, take a new reading and add it to the log. The fine steps come from that reading.`,
      caution: 'Do not join the coupling yet.',
    },
  ]
}
