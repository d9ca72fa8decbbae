import { positive } from '../guard.ts'

/** Lugs on studs, and what is usual for tightening them. */

/** Sizes that differ by less fit each other, m: a lug for M8 and one for 5/16 in do. */
const sameSize = 1e-4

/** How a lug made for a thread of `lug` (m, > 0) goes on a stud of `stud` (m, > 0, else OutOfRange), nominal diameters. `too-small`: it does not go
 * on. `too-large`: its ring is wider than the stud needs, so less of it touches. Source: ring size = stud size, ABYC E-11 as summarised.
 * @example lugOnStud({ lug: 0.008, stud: 0.01 }) // 'too-small' */
export function lugOnStud(given: {
  readonly lug: number
  readonly stud: number
}): 'fits' | 'too-small' | 'too-large' {
  const over = positive('lug', given.lug) - positive('stud', given.stud)
  if (Math.abs(over) <= sameSize) return 'fits'
  return over < 0 ? 'too-small' : 'too-large'
}

/** Lugs on one stud. Source: ABYC E-11 as summarised. */
export const mostLugs = 4

/** What is usual for one kind of joint, N·m. They are not interchangeable. */
export interface UsualTorque {
  readonly joint: 'screw terminal' | 'copper bar' | 'switchgear' | 'battery stud' | 'steel stud'
  readonly low: number
  readonly high: number
}

type Row = readonly [millimetres: number, ...torques: readonly UsualTorque[]]
const usual = (joint: UsualTorque['joint'], low: number, high = low): UsualTorque => ({ joint, low, high })

/** Sources: an inverter manual (screw terminal, copper alloy); a tutorial on DIN 43673 (bolted copper bar, steel 8.8, dry); a switchgear guide; guides of
 * battery makers (lead AGM, stud); a power-supply manual (inch studs, steel grade 2). Single public sources each. */
const torques: readonly Row[] = [
  [5, usual('screw terminal', 2)],
  [
    6,
    usual('screw terminal', 2.5),
    usual('copper bar', 8),
    usual('switchgear', 6.5),
    usual('battery stud', 3, 6.3),
  ],
  [6.35, usual('steel stud', 5.2, 6)],
  [7.9375, usual('steel stud', 6.8, 12)],
  [
    8,
    usual('screw terminal', 6),
    usual('copper bar', 20),
    usual('switchgear', 17),
    usual('battery stud', 6.6, 11),
  ],
  [9.525, usual('steel stud', 11, 22)],
  [
    10,
    usual('screw terminal', 10),
    usual('copper bar', 40),
    usual('switchgear', 35),
    usual('battery stud', 10.4, 13),
  ],
  [12, usual('screw terminal', 14), usual('copper bar', 70), usual('switchgear', 68)],
  [16, usual('screw terminal', 25), usual('copper bar', 120), usual('switchgear', 135)],
]

/** What is usual for a thread of `diameter` (m, > 0, else OutOfRange), by kind of joint; none where no source has the thread. Hints only: the figure of
 * the maker counts. Sources: beside the table.
 * @example usualTorques(0.012)[0]?.high // ≈ 14 */
export function usualTorques(diameter: number): readonly UsualTorque[] {
  const millimetres = positive('thread', diameter) * 1000
  const row = torques.find(([size]) => Math.abs(size - millimetres) < 1e-3)
  return row ? (row.slice(1) as unknown as readonly UsualTorque[]) : []
}
