// Drives that look random: couplings, beds, targets and logs of all sorts, most of them sound. All data invented.
import type { Random } from '../fuzz/random.ts'

const mm = (value: number, decimals = 2): string => `${value.toFixed(decimals)} mm`
const inch = (value: number): string => `${(value / 25.4).toFixed(4)} in`

/** A job with one drive, its bed, perhaps a target, and one to three readings with moves between them. */
export function randomDrive(random: Random): string {
  const { next, pick, chance } = random
  const between = (low: number, high: number) => low + (high - low) * next()
  const system = chance(0.3) ? 'inch' : 'metric'
  const length = (value: number) => (system === 'inch' ? inch(value) : mm(value))
  const flange = between(80, 320)
  const circle = flange * between(0.7, 0.98)
  const step = pick(
    system === 'inch' ? [0.0005, 0.001, 0.0015].map((i) => i * 25.4) : [0.005, 0.01, 0.02, 0.05],
  )
  const gauge = system === 'inch' ? inch(step) : mm(step, 3)
  const onStep = (value: number) => {
    const marked = Math.round(value / step) * step
    return system === 'inch' ? inch(marked) : mm(marked, 3)
  }
  const limits = chance(0.6)
    ? `gap-variation: max ${length(between(0.05, 0.2))}  offset: max ${length(between(0.05, 0.3))}`
    : ''
  const ratings = chance(0.2)
    ? `max-offset: ${length(between(0.1, 1))}  max-angle: ${between(0.05, 1).toFixed(2)} deg`
    : ''
  const kind = pick(['flexible', 'flexible', 'rigid'])
  const motor = chance(0.6)
    ? `  motor m { power: 15 kW  speed: ${Math.round(between(300, 9000))} rpm }\n`
    : ''

  const shims = chance(0.3)
  const xs = [between(100, 250), between(400, 700), ...(chance(0.3) ? [between(270, 380)] : [])]
  const feet = xs.flatMap((x, i) =>
    (['port', 'starboard'] as const).map((side) => {
      const more = [
        chance(0.3) && `travel-up: ${length(between(0.5, 8))}`,
        chance(0.3) && `travel-down: ${length(between(0.5, 8))}`,
        chance(0.2) && `hole-clearance: ${length(between(0.3, 3))}`,
        chance(0.2) && `growth: ${length(between(0, 0.2))}`,
        shims && chance(0.5) && `pack: ${length(between(1, 4))}`,
      ].filter(Boolean)
      return {
        name: `f${i}-${side}`,
        text: `    foot f${i}-${side} { from-coupling: ${mm(x, 1)}  across: 120 mm ${side}  ${more.join('  ')} }`,
      }
    }),
  )
  const adjuster = shims
    ? `adjuster: shims${chance(0.8) ? `\n    shims: ${(system === 'inch' ? ['0.002 in', '0.005 in', '0.01 in', '0.02 in'] : ['0.05 mm', '0.1 mm', '0.2 mm', '0.5 mm', '1 mm']).join(', ')}` : ''}`
    : `adjuster: stud-and-nuts\n    thread: ${pick(['M12', 'M16', 'M20', '"1/2-13 UNC"', '"M16x1.5 LH"'])}\n    nut-step: ${pick(['whole-flat', 'half-flat', 'quarter-flat'])}`
  const target = chance(0.4)
    ? `  target { shaft-droop: ${length(between(0, 0.3))}  shaft-slope: ${between(0, 1).toFixed(2)} mrad  afloat-up: ${length(between(-0.1, 0.1))} }\n`
    : ''

  const far = chance(0.1) ? 8 : 1
  let pose = {
    oz: between(-1, 1) * far,
    oy: between(-1, 1) * far,
    tv: between(-4, 4) * far,
    th: between(-4, 4) * far,
  }
  const angles = pick([
    ['top', 'starboard', 'bottom', 'port'],
    ['top', 'starboard', 'bottom', 'port'],
    ['20 deg', '140 deg', '260 deg'],
    ['10 deg', '80 deg', '150 deg', '220 deg', '300 deg'],
  ])
  const radians: Readonly<Record<string, number>> = { top: 0, starboard: 90, bottom: 180, port: 270 }
  const round = (at: (cos: number, sin: number) => number) =>
    angles
      .map((place) => {
        const a = ((radians[place] ?? Number.parseFloat(place)) * Math.PI) / 180
        const odd = chance(0.01) ? 5 * step : 0
        return `${place} ${onStep(at(Math.cos(a), Math.sin(a)) + odd)}`
      })
      .join(', ')
  const log: string[] = []
  const days = 1 + Math.floor(next() * 3)
  for (let day = 1; day <= days; day++) {
    const { oz, oy, tv, th } = pose
    const lifts = chance(0.15)
      ? `    lifts: ${feet.map(({ name }) => `${name} ${mm(between(0.01, chance(0.3) ? 0.2 : 0.05))}`).join(', ')}\n`
      : ''
    log.push(`  reading r${day} {
    taken: 2026-03-0${day}
    gauge: ${gauge}
    gaps: ${round((cos, sin) => 20 - (circle / 2000) * (tv * cos + th * sin))}
${chance(0.8) ? `    offsets: ${round((cos, sin) => oz * cos + oy * sin)}\n` : ''}${lifts}  }
`)
    if (day < days) {
      const rise = between(-0.5, 0.5)
      log.push(
        `  move after r${day} { done: 2026-03-0${day}  ${feet.map(({ name }) => `${name}: ${rise < 0 ? 'down' : 'up'} ${mm(Math.abs(rise))}`).join('  ')} }\n`,
      )
      const sign = chance(0.3) ? -1 : 1
      pose = { ...pose, oz: oz + sign * rise }
    }
  }
  return `job "random" { vessel: "x"  show-in: ${system} }
drive main {
  coupling { kind: ${kind}  flange-diameter: ${mm(flange, 1)}  gauge-diameter: ${mm(circle, 1)}  ${limits}  ${ratings} }
${motor}  bed {
    ${adjuster}
${feet.map(({ text }) => text).join('\n')}
  }
${target}${log.join('')}}
`
}
