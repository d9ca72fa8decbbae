// Jobs with two readings and a move between them, where the machine went somewhere else than noted.

/** A flat of M16, 2 mm of pitch, mm. */
export const flat = 1 / 3

/** Lines of a move: what both feet of an end did. */
export const feet = (aft: string, fwd: string): readonly string[] =>
  ['port', 'stbd'].flatMap((side) => [`aft-${side}: ${aft}`, `fwd-${side}: ${fwd}`])

/** Feet 180 mm and 560 mm forward; the machine truly went up and to starboard by `up` and `across` at both ends, mm. `circle`: where the gauge truly went
 * in, mm, where the file says 110 mm. `offsetsKept`: the later offsets are those of the first reading. */
export function job(
  noted: readonly string[],
  [aft, fwd]: readonly [number, number],
  [aftY, fwdY]: readonly [number, number] = [0, 0],
  { adjuster = 'stud-and-nuts\n    thread: M16', circle = 110, offsetsKept = false } = {},
): string {
  const mm = (value: number) => `${value.toFixed(2)} mm`
  const reading = (name: string, day: string, of: Record<'tv' | 'th' | 'oz' | 'oy', number>) => {
    const at = (slope: number) => mm(2 - (circle / 2000) * slope)
    return `  reading ${name} {
    taken: 2026-03-${day}
    gauge: 0.01 mm
    gaps: top ${at(of.tv)}, starboard ${at(of.th)}, bottom ${at(-of.tv)}, port ${at(-of.th)}
    offsets: top ${mm(of.oz)}, starboard ${mm(of.oy)}, bottom ${mm(-of.oz)}, port ${mm(-of.oy)}
  }
`
  }
  const start = { tv: -4, th: 2.4, oz: 0.4, oy: -0.3 }
  const [tv, th] = [(fwd - aft) / 0.38, (fwdY - aftY) / 0.38]
  const to = {
    tv: start.tv + tv,
    th: start.th + th,
    oz: start.oz + (offsetsKept ? 0 : aft - 0.18 * tv),
    oy: start.oy + (offsetsKept ? 0 : aftY - 0.18 * th),
  }
  return `drive main {
  coupling { kind: flexible  flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  bed {
    adjuster: ${adjuster}
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
${reading('r1', '04', start)}  move after r1 { done: 2026-03-04
${noted.map((line) => `    ${line}\n`).join('')}  }
${reading('r2', '05', to)}}
`
}
