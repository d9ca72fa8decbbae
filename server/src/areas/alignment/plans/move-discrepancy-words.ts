import type { Hypothesis } from '../../../engineering/alignment/hypothesis.ts'
import type { Swapped } from '../../../engineering/alignment/mirrors.ts'
import { formatAbout, formatSi } from '../../../quantity/format.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import { listed } from '../../common/listed.ts'
import type { Comparison, FlangeMisalignment } from './reading-comparison.ts'

/** A comparison as it is spoken of. */
export interface ShownComparison extends Comparison {
  /** How the flange stands in the reading that it is spoken of at, where that is a later one. */
  readonly now?: FlangeMisalignment
  /** A reading before it showed something else already. */
  readonly again?: true
}

/** The later of the two readings. */
export const laterReading = ({ at, now }: ShownComparison): string => (now ? at : 'this reading')

const shares: readonly (readonly [number, string])[] = [
  [1 / 4, 'a quarter of'],
  [1 / 3, 'a third of'],
  [1 / 2, 'half'],
  [2 / 3, 'two thirds of'],
  [3 / 4, 'three quarters of'],
]

const formatShareOf = (share: number): string =>
  shares.reduce((best, one) => (Math.abs(one[0] - share) < Math.abs(best[0] - share) ? one : best))[1]

const wrongWay = {
  'stud-and-nuts': (feet: string) => `the nuts at ${feet} were turned the wrong way`,
  shims: (feet: string) => `the shims at ${feet} went the wrong way: in instead of out, or out instead of in`,
  'by hand': (feet: string, many: boolean) => `${feet} ${many ? 'were' : 'was'} moved the wrong way`,
} as const

const swappedIn = (swapped: Swapped, shown: ShownComparison): string =>
  ({
    later: `in ${laterReading(shown)}`,
    first: `in ${shown.since}`,
    both: `in both readings, ${shown.since} and ${shown.now ? shown.at : 'this one'}`,
  })[swapped]

/** Single feet of which each would explain it alike are named together: a stiff machine shows the same for either. */
type AlternativeHypothesis = Hypothesis & { readonly anyOf?: true }

/** What may have happened, as an installer would say it. */
function formatHypothesis(
  of: AlternativeHypothesis,
  comparison: ShownComparison,
  system: UnitSystem,
): string {
  const { readAt, adjuster, thread } = comparison
  switch (of.type) {
    case 'turned-the-wrong-way':
      return wrongWay[adjuster ?? 'by hand'](
        listed(of.feet, of.anyOf ? 'or' : 'and'),
        !of.anyOf && of.feet.length > 1,
      )
    case 'did-not-follow':
      return `${listed(of.feet, 'or')} did not follow: look for a soft foot`
    case 'not-as-noted':
      return `the move at ${listed(of.feet, 'or')} was not made as noted: the lifts show no soft foot there`
    case 'forgotten':
      return of.feet.length === comparison.raised
        ? 'the heights were not set, and only the sideways move was made'
        : `the move at ${listed(of.feet)} was not made: was it forgotten?`
    case 'nothing-moved':
      return 'nothing moved: was this read before the move was made, was the move not made, or were old figures copied?'
    case 'sideways-not-done':
      return 'the heights were set, and the sideways move was not made'
    case 'wrong-side':
      return 'the machine went to the opposite side'
    case 'part-of-the-way':
      return `the machine went only about ${formatShareOf(of.share)} the way: were the nuts tight when it was read?`
    case 'made-twice':
      return 'the move was made twice'
    case 'move-not-noted':
      return 'a move was made and not noted'
    case 'made-at-the-wrong-end':
      return `${of.made === 'all' ? 'the moves' : 'the heights'} of the two ends were swapped`
    case 'other-pitch': {
      const [fits, has] = [of.factor * (thread?.pitch ?? 0), thread?.pitch ?? 0]
      return `the thread is wrong: the figures fit a pitch of about ${formatAbout(fits, 'length', system)}, but the file says ${formatSi(has, 'length', system)}`
    }
    case 'other-hand':
      return thread?.hand === 'left'
        ? 'the thread is right-hand, but the file says left-hand'
        : 'the thread is left-hand, but the file does not say so'
    case 'top-and-bottom-swapped':
      return `top and bottom are swapped ${swappedIn(of.swapped, comparison)}`
    case 'sides-swapped':
      return `port and starboard are swapped ${swappedIn(of.swapped, comparison)}`
    case 'half-turn':
      return `the places are half a turn off ${swappedIn(of.swapped, comparison)}, or all signs are reversed`
    case 'quarter-turn':
      return `the places are a quarter turn off, ${of.way} looking forward, ${swappedIn(of.swapped, comparison)}`
    case 'offset-signs-reversed':
      return `the signs of the offsets are reversed ${swappedIn(of.swapped, comparison)}: was the dial on the other half?`
    case 'gap-signs-reversed':
      return `the signs of the gaps are reversed ${swappedIn(of.swapped, comparison)}: was the dial read the other way?`
    case 'copied':
      return `the figures are exactly those of ${of.from}: were they copied from it?`
    case 'other-gauge-diameter': {
      const fits = formatAbout(of.factor * readAt.diameter, 'length', system)
      const has = formatSi(readAt.diameter, 'length', system)
      return readAt.stated
        ? `the gauge circle is wrong: the figures fit a gauge-diameter of about ${fits}, but the file says ${has}`
        : `the gauge circle is wrong: the figures fit a gauge-diameter of about ${fits}, but the file states none, only a flange of ${has}`
    }
    case 'offset-not-carried':
      return 'the offset did not change with the slope: are the offsets old ones?'
  }
}

function mergeAlternatives(hypotheses: readonly Hypothesis[]): readonly AlternativeHypothesis[] {
  const single = (of: Hypothesis) => 'feet' in of && of.feet.length === 1
  const alike = (type: Hypothesis['type']) =>
    hypotheses.flatMap((of) => (of.type === type && 'feet' in of && single(of) ? of.feet : []))
  return hypotheses.flatMap((of) => {
    if (!('feet' in of) || !single(of)) return [of]
    const feet = alike(of.type)
    if (feet.length < 2) return [of]
    return of.feet[0] === feet[0] ? [{ ...of, feet: [...feet].sort(), anyOf: true as const }] : []
  })
}

const withFullStop = (words: string): string => (words.endsWith('?') ? words : `${words}.`)

/** What a comparison is about: `This reading does not match the moves since dry-1.` */
export const formatRoughly = ({ since, noted }: Comparison): string =>
  noted
    ? `This reading does not match the moves since ${since}.`
    : `No move is noted since ${since}, but the machine has moved.`

/** What explains a mismatch: all that do, or that none does. Empty where noise explains it. */
export function formatExplanations(comparison: ShownComparison, system: UnitSystem): string {
  const { noise, explanations } = comparison.mismatch
  if (noise) return ''
  const [first, ...more] = mergeAlternatives(explanations.map(({ hypothesis }) => hypothesis)).map((of) =>
    withFullStop(formatHypothesis(of, comparison, system)),
  )
  if (first === undefined) return 'No single mistake explains it.'
  return more.length === 0
    ? `Most likely ${first}`
    : `More than one mistake could explain it. Either ${[first, ...more].join(' Or ')}`
}
