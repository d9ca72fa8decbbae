/** Screw threads by their designation. Metric: ISO 261 sizes, ISO 262 selection; inch: ASME B1.1 UNC and
 * UNF. */
import type { Result } from './result.ts'

/** Nominal diameter and pitch in m. Right-hand unless the designation ends in LH. */
export type Thread = { readonly diameter: number; readonly pitch: number; readonly hand: 'right' | 'left' }

/** Why a designation is not a thread: not readable as one; a size whose pitch has to be written (`M30x3.5`,
 * `3/4-10`) because it is not in the tables or could be either series; or a pitch (m) that the size does
 * not have (`standard` m: what the named series has, or the coarse pitch). */
export type ThreadProblem =
  | { readonly type: 'not-a-thread'; readonly text: string }
  | { readonly type: 'pitch-missing'; readonly text: string }
  | {
      readonly type: 'pitch-wrong'
      readonly text: string
      readonly pitch: number
      readonly standard?: number
    }

/** Coarse pitch, mm, by nominal diameter, mm. Source: ISO 261 / ISO 262; each reproduces the stress areas
 * of ISO 898-1 to 0.4 %. */
const metricCoarse: Readonly<Record<string, number>> = {
  6: 1,
  8: 1.25,
  10: 1.5,
  12: 1.75,
  14: 2,
  16: 2,
  18: 2.5,
  20: 2.5,
  22: 2.5,
  24: 3,
}

/** Threads per inch by nominal diameter, in sixteenths of an inch. Source: two public UNC/UNF dimension
 * tables (ASME B1.1). */
const unified: Readonly<Record<'UNC' | 'UNF', Readonly<Record<string, number>>>> = {
  UNC: { 4: 20, 5: 18, 6: 16, 7: 14, 8: 13, 9: 12, 10: 11, 12: 10, 14: 9, 16: 8 },
  UNF: { 4: 28, 5: 24, 6: 24, 7: 20, 8: 20, 9: 18, 10: 18, 12: 16, 14: 14, 16: 12 },
}

/** Designations of the sizes in the tables, with the coarse pitch of each, the smallest first.
 * @example standardThreads.inch[0] // '1/4-20 UNC' */
export const standardThreads: { readonly metric: readonly string[]; readonly inch: readonly string[] } = {
  metric: Object.keys(metricCoarse).map((size) => `M${size}`),
  inch: Object.entries(unified.UNC).map(
    ([sixteenths, perInch]) => `${inches(Number(sixteenths))}-${perInch} UNC`,
  ),
}

/** Sixteenths of an inch as a fraction without common factors: `4` as `1/4`, `16` as `1`. */
function inches(sixteenths: number): string {
  let [over, under] = [sixteenths, 16]
  while (over % 2 === 0 && under > 1) [over, under] = [over / 2, under / 2]
  return under === 1 ? String(over) : `${over}/${under}`
}

const metricForm =
  /^(?<leftFirst>LH[\s-]*)?M\s*(?<size>\d+(?:\.\d+)?)(?:\s*[x×*]\s*(?<pitch>\d+(?:\.\d+)?))?(?<left>[\s-]*LH)?$/i
const inchForm =
  /^(?<leftFirst>LH[\s-]*)?(?:(?:(?<whole>\d+)[\s-]+)?(?<over>\d+)\/(?<under>\d+)|(?<inches>\d+))(?:\s*in|")?(?:\s*-\s*(?<tpi>[1-9]\d*(?:\.\d+)?))?\s*(?<series>UNC|UNF)?(?:(?<=UN[CF])-[123][AB])?(?<left>[\s-]*LH)?$/i

const inch = 0.0254

/** What the two forms above find. */
type Parts = {
  readonly [part in
    | 'size'
    | 'pitch'
    | 'whole'
    | 'over'
    | 'under'
    | 'inches'
    | 'tpi'
    | 'series'
    | 'left'
    | 'leftFirst']?: string
}

const handOf = ({ left, leftFirst }: Parts): Thread['hand'] =>
  left === undefined && leftFirst === undefined ? 'right' : 'left'

/** Coarsest pitch a screw of this diameter can have: a quarter of it, as on M1; the smallest size here is 1
 * mm. */
function checked(text: string, thread: Thread, standard: number | undefined): Result<Thread, ThreadProblem> {
  const { diameter, pitch } = thread
  if (!(diameter >= 0.001 && diameter <= 0.3)) return { ok: false, problem: { type: 'not-a-thread', text } }
  if (pitch > 1e-4 && pitch <= diameter / 4 + 1e-12 && (standard === undefined || pitch <= standard + 1e-12))
    return { ok: true, value: thread }
  return {
    ok: false,
    problem: { type: 'pitch-wrong', text, pitch, ...(standard !== undefined && { standard }) },
  }
}

function metricThread(text: string, part: Parts): Result<Thread, ThreadProblem> {
  const coarse = metricCoarse[Number(part.size)]
  const pitch = part.pitch === undefined ? coarse : Number(part.pitch)
  if (pitch === undefined) return { ok: false, problem: { type: 'pitch-missing', text } }
  const hand = handOf(part)
  const thread: Thread = { diameter: Number(part.size) / 1000, pitch: pitch / 1000, hand }
  return checked(text, thread, coarse === undefined ? undefined : coarse / 1000)
}

function inchThread(text: string, part: Parts): Result<Thread, ThreadProblem> {
  const size = Number(part.inches ?? part.whole ?? 0) + Number(part.over ?? 0) / Number(part.under ?? 1)
  const series = part.series?.toUpperCase() as 'UNC' | 'UNF' | undefined
  const listed = series && unified[series][size * 16]
  const tpi = part.tpi === undefined ? listed : Number(part.tpi)
  if (tpi === undefined) return { ok: false, problem: { type: 'pitch-missing', text } }
  const pitch = inch / tpi
  if (listed !== undefined && listed !== tpi)
    return { ok: false, problem: { type: 'pitch-wrong', text, pitch, standard: inch / listed } }
  const hand = handOf(part)
  return checked(text, { diameter: size * inch, pitch, hand }, undefined)
}

/** Thread from its designation: `M16` (coarse), `M16x1.5`, `3/4-10 UNC`, `3/4-16 UNF`, `3/4 UNC`,
 * `1-1/4-7`; ` LH` behind or before it for left-hand; a class of fit
 * (`UNF-2A`) changes no pitch. Sizes in the tables: M6 to M24, 1/4 to 1 in; others need their pitch. A
 * series that does not have the pitch stated is a problem, not a guess.
 * @example parseThread('M16') // { ok: true, value: { diameter: 0.016, pitch: 0.002, hand: 'right' } } */
export function parseThread(designation: string): Result<Thread, ThreadProblem> {
  const text = designation.trim()
  const metric: Parts | undefined = metricForm.exec(text)?.groups
  if (metric) return metricThread(text, metric)
  const inches: Parts | undefined = inchForm.exec(text)?.groups
  if (inches) return inchThread(text, inches)
  return { ok: false, problem: { type: 'not-a-thread', text } }
}

/** Height that a turn (rad, + up) of the nut gives a foot, m, + up. Source: lead of a single-start thread = pitch.
 * @example heightOf(Math.PI / 3, { pitch: 0.002 }) // ≈ 3.333e-4 */
export const heightOf = (turn: number, { pitch }: Pick<Thread, 'pitch'>): number =>
  (turn / (2 * Math.PI)) * pitch
