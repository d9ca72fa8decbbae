import { type NutMove, nutMoves, nutTravel, shimPack } from '../engineering/adjusters.ts'
import type { FootCorrection } from '../engineering/alignment/feet.ts'
import type { Thread } from '../engineering/thread.ts'
import { expanded, type Uncertain } from '../quantity/uncertainty.ts'

/** How one foot gets its height: the lower nut of its stud, shims put in or taken out, by whatever is at hand, or not at all. */
export type FootStep =
  | { readonly by: 'nut'; readonly move: NutMove }
  | {
      readonly by: 'shims'
      readonly action: 'put in' | 'take out' | 'none'
      /** Of the pieces together, m; where there are none to take out, what is wanted. */
      readonly thickness: number
      /** Of the shims listed, thickest first; none where they do not reach. */
      readonly pieces: readonly number[]
    }
  | { readonly by: 'hand' }
  | { readonly by: 'none' }

export interface CorrectedFoot extends FootCorrection {
  readonly step: FootStep
  /** What the step does to the height, m. */
  readonly moved: number
}

export type Adjuster =
  | { readonly by: 'nut'; readonly thread: Thread }
  | { readonly by: 'shims'; readonly stock: readonly number[] }
  | { readonly by: 'hand' }

/** Whether U (k = 2) is larger than the move itself: then not even its direction is sure. */
export const unseen = (move: Uncertain): boolean => expanded(move) > Math.abs(move.value)

/** A foot that is left alone. */
export const left = (foot: FootCorrection): CorrectedFoot => ({ ...foot, step: { by: 'none' }, moved: 0 })

/** The step of each foot. Nuts go by half flats, and are chosen together: of the half flats next to what each station needs, those with the
 * least `cost` (how far the result uses up its limits). Each foot rounded by itself can leave an offset that another choice would not. */
export function stepsFor(
  feet: readonly FootCorrection[],
  adjuster: Adjuster,
  cost: (feet: readonly CorrectedFoot[]) => number,
): readonly CorrectedFoot[] {
  if (adjuster.by === 'hand')
    return feet.map((foot) => ({ ...foot, step: { by: 'hand' }, moved: foot.vertical.value }))
  if (adjuster.by === 'shims') return feet.map((foot) => shimmed(foot, adjuster.stock))
  const { thread } = adjuster
  const halfFlat = nutTravel({ turns: 0, flats: 0.5 }, thread.pitch)
  const stations = [...new Set(feet.map(({ vertical }) => Math.round(vertical.value * 1e9)))]
  // Four stations are 81 choices; more feet than that stand on no small machine, and go by themselves.
  const offers = stations.length > 4 ? [0] : [0, -1, 1]
  let best: { readonly feet: readonly CorrectedFoot[]; readonly cost: number } | undefined
  for (const choice of choices(stations.length, offers)) {
    const turned = feet.map((foot): CorrectedFoot => {
      const wanted = foot.vertical.value
      const station = stations.indexOf(Math.round(wanted * 1e9))
      const halves = Math.round(wanted / halfFlat) + (choice[station] ?? 0)
      const { halfFlats } = nutMoves(halves * halfFlat, thread)
      const move = { ...halfFlats, left: wanted - halfFlats.moved }
      return { ...foot, step: { by: 'nut', move }, moved: move.moved }
    })
    const away = turned.reduce((sum, foot) => sum + Math.abs(foot.vertical.value - foot.moved), 0)
    // Where two choices do as well, the one nearer to each foot's own need.
    const total = cost(turned) + (1e-3 * away) / halfFlat
    if (!best || total < best.cost - 1e-9) best = { feet: turned, cost: total }
  }
  return best?.feet ?? feet.map(left)
}

const choices = (count: number, offers: readonly number[]): readonly (readonly number[])[] =>
  count === 0 ? [[]] : choices(count - 1, offers).flatMap((rest) => offers.map((offer) => [...rest, offer]))

/** Shims come from the stock, and the pack under the foot is taken to be built of the same. Where the stock does not reach what is to come
 * out, that is left as a thickness: what lies there, the job does not say. */
function shimmed(foot: FootCorrection, stock: readonly number[]): CorrectedFoot {
  const wanted = foot.vertical.value
  const { pieces, thickness, left: short } = shimPack(Math.abs(wanted), stock)
  const step = { by: 'shims', thickness, pieces } as const
  if (pieces.length === 0) return { ...foot, step: { ...step, action: 'none' }, moved: 0 }
  if (wanted > 0) return { ...foot, step: { ...step, action: 'put in' }, moved: thickness }
  return Math.abs(short) > Math.min(...stock)
    ? { ...foot, step: { by: 'shims', action: 'take out', thickness: -wanted, pieces: [] }, moved: wanted }
    : { ...foot, step: { ...step, action: 'take out' }, moved: -thickness }
}
