import type { FootCorrection } from '../engineering/alignment/feet.ts'
import type { UnitSystem } from '../quantity/kinds.ts'
import { saidRough } from '../quantity/said.ts'
import type { Correction } from './alignment.ts'
import { roughlyAligned } from './alignment-rough.ts'
import { isolate, part, secureShaft, type Task } from './alignment-tasks.ts'
import { alike, holder, named, onStuds } from './feet-together.ts'
import { listed } from './listed.ts'

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

/** Rough alignment, its own stage with its own way of measuring. Common practice, no source. */
export function roughTasks(c: Correction, system: UnitSystem): readonly Task[] {
  if (c.feet.length === 0) return []
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
    {
      words:
        'Check the figures first: gaps and offsets, diameters, places of the feet. A wrong figure looks like this. Where they are right, align roughly:',
    },
    isolate,
    secureShaft,
    part,
    {
      words: `Take the weight of the machine on a jack or a hoist near its centre of gravity. See that ${studs ? 'the thread of the studs and their holes' : 'the fastenings and their holes'} leave room enough: ${listed(room)}.`,
      caution: 'A lifted machine can drop: keep hands and fingers from under it.',
    },
    {
      words: `Slacken all ${holder(c)}, and never take them off. Move the machine little by little, one end after the other, with ${
        studs ? 'the lower nuts run up after it' : 'packing put under it as it rises'
      } so that it cannot drop:`,
      lines: [...alike(c.feet, (foot) => sayWay(foot, system))].map(([way, feet]) => `${named(feet)} ${way}`),
    },
    {
      words: `Measure by eye: a straightedge over both rims, at the top and at the side; a taper gauge or a rule between the faces. Go on until they show less than ${saidRough(roughlyAligned, system)} everywhere.`,
    },
    {
      words: `Tighten the ${holder(c)}, take a new reading and write it into the log. The fine steps come from that.`,
      caution: 'Do not join the coupling yet.',
    },
  ]
}
