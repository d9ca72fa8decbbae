import type { Hypothesis } from '../../../engineering/alignment/hypothesis.ts'
import type { Swapped } from '../../../engineering/alignment/mirrors.ts'
import type { InPlanes } from '../../../engineering/alignment/planes.ts'
import { isLasting, isSound } from '../../../engineering/alignment/suppositions.ts'
import { formatSi } from '../../../quantity/format.ts'
import { formatLength } from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import { expanded } from '../../../quantity/uncertainty.ts'
import { laterReading, type ShownComparison } from './move-discrepancy-words.ts'

/** A look or a reading that decides between explanations, the least trouble first. */
const inspections = [
  'read-again-tight',
  'open-at-top',
  'open-at-side',
  'gap-widest',
  'rim-at-top',
  'stud',
  'marks',
  'washers',
  'circle',
  'offsets-again',
  'lifts',
] as const
type Inspection = (typeof inspections)[number]

type InspectionResults = Partial<Record<Inspection, string>>

/** Gaps that are written across from where they are. */
const across: InspectionResults = {
  'open-at-top': 'the other way',
  'open-at-side': 'the other way',
  'gap-widest': 'across',
}

/** What is wrong in the first reading alone can be looked at no more. */
const ofThis = ({ swapped }: { readonly swapped: Swapped }, shows: InspectionResults): InspectionResults =>
  swapped === 'first' ? {} : shows

/** What a look shows where this is what happened; a look that is not named shows what the file says. */
function expectedResults(of: Hypothesis): InspectionResults {
  switch (of.type) {
    case 'turned-the-wrong-way':
    case 'forgotten':
    case 'not-as-noted':
      return { marks: `${of.type} ${of.feet}` }
    case 'did-not-follow':
      return { lifts: of.feet.join() }
    case 'nothing-moved':
    case 'copied':
    case 'part-of-the-way':
      return { 'read-again-tight': 'another reading' }
    case 'sideways-not-done':
    case 'wrong-side':
      return { washers: of.type }
    case 'made-twice':
    case 'move-not-noted':
    case 'made-at-the-wrong-end':
      return { marks: of.type }
    case 'other-pitch':
    case 'other-hand':
      return { stud: of.type }
    case 'top-and-bottom-swapped':
      return ofThis(of, {
        'open-at-top': 'the other way',
        'gap-widest': 'elsewhere',
        'rim-at-top': 'the other way',
      })
    case 'sides-swapped':
      return ofThis(of, { 'open-at-side': 'the other way', 'gap-widest': 'elsewhere' })
    case 'half-turn':
      return ofThis(of, { ...across, 'rim-at-top': 'the other way' })
    case 'quarter-turn':
      return ofThis(of, { 'gap-widest': `a quarter ${of.way}`, 'rim-at-top': 'as at a side' })
    case 'gap-signs-reversed':
      return ofThis(of, across)
    case 'offset-signs-reversed':
      return ofThis(of, { 'rim-at-top': 'the other way' })
    case 'other-gauge-diameter':
      return { circle: 'another circle' }
    case 'offset-not-carried':
      return { 'offsets-again': 'another offset' }
  }
}

/** A reading taken too early is taken again before anything else; a place that was swapped in the earlier reading shows in how this one is right. */
const immediateInspections = (of: Hypothesis): readonly Inspection[] => {
  switch (of.type) {
    case 'nothing-moved':
    case 'part-of-the-way':
    case 'copied':
      return ['read-again-tight']
    case 'top-and-bottom-swapped':
      return ['open-at-top']
    case 'sides-swapped':
      return ['open-at-side']
    case 'offset-signs-reversed':
      return ['rim-at-top']
    case 'half-turn':
    case 'quarter-turn':
    case 'gap-signs-reversed':
      return ['gap-widest']
    default:
      return []
  }
}

/** The fewest looks that tell these apart, as far as any can: each time the one that parts most of those that are still together. */
function inspectionsFor(hypotheses: readonly Hypothesis[]): readonly Inspection[] {
  const shown = hypotheses.map(expectedResults)
  const chosen = new Set(hypotheses.flatMap(immediateInspections))
  const parts = (look: Inspection, a: number, b: number) => shown[a]?.[look] !== shown[b]?.[look]
  let open = hypotheses.flatMap((_, b) =>
    hypotheses
      .slice(0, b)
      .flatMap((__, a) => ([...chosen].some((look) => parts(look, a, b)) ? [] : [[a, b] as const])),
  )
  while (open.length > 0) {
    const parted = (look: Inspection) => open.filter(([a, b]) => parts(look, a, b)).length
    const best = inspections.reduce((most, look) => (parted(look) > parted(most) ? look : most))
    if (parted(best) === 0) break
    chosen.add(best)
    open = open.filter(([a, b]) => !parts(best, a, b))
  }
  const [only] = shown
  if (chosen.size === 0 && only)
    for (const look of inspections) if (only[look] !== undefined) chosen.add(look)
  return inspections.filter((look) => chosen.has(look))
}

/** A coupling that gapes by more than this is seen to. Common practice, no source. */
const visibleOpening = 0.3e-3

const sides = {
  vertical: { places: ['top', 'bottom'], offset: ['high', 'low'] },
  horizontal: { places: ['starboard side', 'port side'], offset: ['to starboard', 'to port'] },
} as const

/** Which side is open, by the plainest means that can tell it. */
function openSide(
  { found, now }: ShownComparison,
  plane: keyof InPlanes<unknown>,
  system: UnitSystem,
): string {
  const { opening: openings, offset: offsets } = now ?? found
  const [opening, offset] = [openings[plane], offsets?.[plane]]
  const { places, offset: stands } = sides[plane]
  const wider = places[opening.value > 0 ? 0 : 1]
  if (Math.abs(opening.value) > visibleOpening)
    return `Look at the coupling: by this reading, it is open at the ${wider}.`
  if (Math.abs(opening.value) > expanded(opening))
    return `Try a feeler gauge at the ${places[0]} and at the ${places[1]}: by this reading, the ${wider} takes ${formatLength(Math.abs(opening.value), system)} more.`
  if (offset && Math.abs(offset.value) > expanded(offset))
    return `Lay a straightedge across both flanges at the ${places[0]}: by this reading, the machine flange stands ${formatLength(Math.abs(offset.value), system)} ${stands[offset.value > 0 ? 0 : 1]}.`
  return `Read the ${places[0]} and the ${places[1]} again, while a second person calls out each place.`
}

/** Where the gap is widest, by eye. */
function gapWidest({ found, now }: ShownComparison, system: UnitSystem): string {
  const { vertical, horizontal } = (now ?? found).opening
  const plane = Math.abs(vertical.value) > Math.abs(horizontal.value) ? 'vertical' : 'horizontal'
  const opening = (now ?? found).opening[plane]
  const wider = sides[plane].places[opening.value > 0 ? 0 : 1]
  if (Math.abs(opening.value) <= expanded(opening))
    return 'Read all places again, while a second person calls out each place.'
  return `Find where the gap is widest, by eye or with a feeler gauge: by this reading, at the ${wider}, by ${formatLength(Math.abs(opening.value), system)}.`
}

/** Which rim stands out at the top. */
function rimAtTop({ found, now }: ShownComparison, system: UnitSystem): string {
  const offset = (now ?? found).offset?.vertical
  if (!offset || Math.abs(offset.value) <= expanded(offset))
    return 'Read the offsets again, and check which half carries the dial.'
  const rim = offset.value > 0 ? 'machine' : 'shaft'
  return `Lay a straightedge across both rims at the top: by this reading, the rim of the ${rim} flange stands out by ${formatLength(Math.abs(offset.value), system)}.`
}

function stud({ thread, mismatch }: ShownComparison, system: UnitSystem): string {
  if (!thread) return 'Check the thread of a stud.'
  const asked = new Set(mismatch.explanations.map(({ hypothesis: { type } }) => type))
  const way = thread.hand === 'left' ? 'left' : 'right'
  const pitch = `ten turns of its thread must measure ${formatSi(10 * thread.pitch, 'length', system)}`
  const hand = `the turns of a ${way}-hand thread rise to the ${way}`
  return `Check a stud: ${[asked.has('other-pitch') && pitch, asked.has('other-hand') && hand].filter(Boolean).join(', and ')}.`
}

const marks = {
  'stud-and-nuts': 'Use the marks on the lower nuts to see which were turned, which way and how far.',
  shims: 'Measure the pack of shims under each foot, and compare it with the log.',
  'by hand': 'Ask whoever made the move which feet were moved, which way and how far.',
} as const

function formatCheckFirst(look: Inspection, comparison: ShownComparison, system: UnitSystem): string {
  switch (look) {
    case 'read-again-tight':
      return 'Tighten all feet and read again. Move nothing before that.'
    case 'open-at-top':
      return openSide(comparison, 'vertical', system)
    case 'open-at-side':
      return openSide(comparison, 'horizontal', system)
    case 'gap-widest':
      return gapWidest(comparison, system)
    case 'rim-at-top':
      return rimAtTop(comparison, system)
    case 'stud':
      return stud(comparison, system)
    case 'marks':
      return marks[comparison.adjuster ?? 'by hand']
    case 'washers':
      return 'Look at the marks of the washers on the feet: they show whether the machine slid, and which way.'
    case 'circle':
      return `Measure the circle where the gauge goes in: the file says ${formatSi(comparison.readAt.diameter, 'length', system)}.`
    case 'offsets-again':
      return 'Read the offsets again.'
    case 'lifts':
      return 'With the machine supported, slacken one foot at a time with a dial on it, and write down the lifts: a soft foot rises.'
  }
}

const inReading = (swapped: Swapped, shown: ShownComparison): string =>
  ({
    later: laterReading(shown),
    first: shown.since,
    both: shown.now ? `both readings, ${shown.since} and ${shown.at}, and those since` : 'both readings',
  })[swapped]

/** What to do where this is what happened. */
function ifSo(of: Hypothesis, shown: ShownComparison): string {
  switch (of.type) {
    case 'did-not-follow':
      return 'If a foot is soft, correct it and read again.'
    case 'nothing-moved':
      return 'If the move was not made, remove it from the log.'
    case 'part-of-the-way':
      return shown.again
        ? 'If it shows the same again with all feet tight, the move was not made as noted: write it as it was made.'
        : 'If the machine was not tight, use the new reading.'
    case 'other-pitch':
      return 'If the pitch is different, correct the thread of the bed.'
    case 'other-hand':
      return 'If the thread has the other hand, correct the thread of the bed, and write the move as it was made.'
    case 'top-and-bottom-swapped':
      return `If top and bottom are swapped, correct ${inReading(of.swapped, shown)}.`
    case 'sides-swapped':
      return `If port and starboard are swapped, correct ${inReading(of.swapped, shown)}.`
    case 'half-turn':
      return `If the places are half a turn off, or all signs are reversed, correct ${inReading(of.swapped, shown)}.`
    case 'quarter-turn':
      return `If the places are a quarter turn off, correct ${inReading(of.swapped, shown)}.`
    case 'offset-signs-reversed':
      return `If the signs of the offsets are reversed, correct ${inReading(of.swapped, shown)}.`
    case 'gap-signs-reversed':
      return `If the signs of the gaps are reversed, correct ${inReading(of.swapped, shown)}.`
    case 'copied':
      return `If the figures were copied from ${of.from}, replace them with what is read now.`
    case 'other-gauge-diameter':
      return 'If the circle is different, correct the gauge-diameter.'
    case 'offset-not-carried':
      return 'If the offsets are different now, correct them in this reading.'
    case 'move-not-noted':
      return `If feet were moved, write that as a move after ${shown.since}.`
    default:
      return 'If the move was not made as noted, write it in the log as it was made.'
  }
}

/** What to do where nothing that is known explains it. */
function unexplained({ since, at, now, again }: ShownComparison): string {
  if (!now && !again) return 'Read again before you move anything.'
  const which = now ? `${since}, ${at}` : `${since}, the readings since`
  return `Check ${which} and the moves in between, and correct what is wrong. Reading again has not settled it. If ${since} was misread, remove it from the log, with the moves after it.`
}

/** What to do first after a reading that shows another effect, and what then frees the plan. */
export function formatWhatFirst(shown: ShownComparison, system: UnitSystem): string {
  const all = shown.mismatch.explanations.map(({ hypothesis }) => hypothesis)
  if (all.length === 0) return unexplained(shown)
  // Of an earlier reading, what was of that one alone can be looked at no more.
  const hypotheses = shown.now ? all.filter((of) => isLasting(of) || isSound(of)) : all
  return [
    ...inspectionsFor(hypotheses).map((look) => formatCheckFirst(look, shown, system)),
    ...new Set(hypotheses.map((of) => ifSo(of, shown))),
    ...(shown.now
      ? [
          `If everything is as the file says, ${shown.at} was misread or taken too early: remove it from the log, and let the moves after it come after ${shown.since}.`,
        ]
      : []),
  ].join(' ')
}
