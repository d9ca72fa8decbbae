import { published } from '../../../checks/check.ts'
import type { Closure } from '../../../engineering/alignment/closure.ts'
import type { InPlanes } from '../../../engineering/alignment/planes.ts'
import { type Block, factOf } from '../../../job/model.ts'
import type { Uncertain } from '../../../quantity/uncertainty.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { type Amount, figure, figureOnceChecked, figureWhereKnown } from '../../common/figure.ts'
import { listed } from '../../common/listed.ts'
import { failed, ok } from '../../common/outcome.ts'
import type { Ground } from '../../common/view.ts'
import { trustedOn } from '../plan-trust.ts'
import { type Correction, correctionOf } from '../plans/correction.ts'
import type { JudgedFigure } from '../plans/judged.ts'
import { softLimit } from '../plans/lifts.ts'
import { moveDiscrepancy } from '../plans/move-discrepancy.ts'
import { angleOf, isPast } from '../plans/rating.ts'
import { uncertain, withoutNoise } from './amounts.ts'

interface Corrected {
  readonly correction: Correction
  /** Why the reading proves nothing. */
  readonly doubt?: string
}

const disagree = 'the readings disagree: read again'

/** A reading with what speaks against it: its own values, the log, or the names in the job. */
function corrected(reading: Block, lookup: Lookup) {
  const outcome = correctionOf(reading, lookup)
  if (!outcome.ok) return outcome
  const correction = outcome.value
  const discrepancy = moveDiscrepancy(reading, lookup)
  const doubt = correction.contradictory
    ? disagree
    : discrepancy?.withholds
      ? 'it does not match the moves in the log'
      : correction.doubts.find(({ type }) => type !== 'later-reading')?.words
  return ok<Corrected>({ correction, ...(doubt !== undefined && { doubt }) })
}

const moved = 'the machine was moved since: read again'

/** The feet can be set only from a reading that shows where they are now. */
const outdated = ({ movedSince, laterReading }: Correction): string | undefined => {
  if (movedSince) return moved
  return laterReading === undefined ? undefined : `the later reading ${laterReading} counts`
}

/** A move after the last reading leaves open how the machine stands. */
const lastBeforeMove = ({ movedSince, laterReading }: Correction): string | undefined =>
  movedSince && laterReading === undefined ? moved : undefined

const judged = (
  {
    value,
    limit,
    limitFrom,
  }: Pick<JudgedFigure, 'value' | 'limitFrom'> & { readonly limit: number | undefined },
  { correction, doubt = lastBeforeMove(correction) }: Corrected,
): Amount => ({
  ...uncertain(value),
  ...(limit !== undefined && { limit: { high: limit }, limitFrom }),
  ...(doubt !== undefined && { doubt }),
  assumptions: correction.assumptions,
})

const inPlanes = (parts: InPlanes<Uncertain>, { doubt }: Corrected): readonly Amount[] =>
  (['vertical', 'horizontal'] as const).map((plane) => ({
    ...uncertain(parts[plane]),
    ...(doubt !== undefined && { doubt }),
    key: { plane },
  }))

const fitted =
  'gap at an angle = mean gap - radius × (slope up × cos + slope to starboard × sin), fitted to all places by least squares.'
const footFormula = 'height of a foot = -(offset + slope × distance forward of the faces).'
const uncertainty =
  'ISO/IEC Guide 98-3: least squares with the uncertainty of the gauge step, k = 2; verdict by the decision rule of ISO 14253-1'

export const gapVariation = figure({
  id: 'alignment/gap-variation',
  on: 'reading',
  title: 'Gap variation',
  kind: 'length',
  doc: 'The greatest less the smallest gap of the faces where the gauge goes in, counted from the target where there is one.',
  formula:
    'diameter × slope of the face; within if value + U is inside the limit, outside if value - U is beyond it (ISO 14253-1).',
  source: published(uncertainty),
  from: corrected,
  of: (found) => judged(found.correction.gapVariation, found),
})

/** What the flexible element is rated for, where the reading still says how the machine runs. */
function rated(reading: Block, lookup: Lookup) {
  const found = corrected(reading, lookup)
  const coupling = isPast(reading, lookup) ? undefined : lookup.near('coupling')
  return found.ok
    ? ok({
        ...found.value,
        offset: coupling && factOf(coupling, 'coupling.max-offset')?.value,
        angle: coupling && factOf(coupling, 'coupling.max-angle')?.value,
      })
    : found
}

const theRating = 'the rating of the coupling'

const ratedOffset = figure({
  id: 'alignment/rated-offset',
  on: 'reading',
  title: 'Offset against the rating',
  kind: 'length',
  doc: 'The offset, counted from the target where there is one, against what the flexible element is rated for. Only where the coupling states its `max-offset`.',
  source: published(uncertainty),
  from: rated,
  of: ({ offset: limit, ...found }) => {
    const { offset } = found.correction
    return limit === undefined || !offset
      ? undefined
      : judged({ value: offset.value, limit, limitFrom: theRating }, found)
  },
})

const angle = figure({
  id: 'alignment/angle',
  on: 'reading',
  title: 'Angle of the axes',
  kind: 'angle',
  unit: 'mrad',
  doc: 'The angle between the axes, counted from the target where there is one. Its limit is what the flexible element is rated for, where the coupling states its `max-angle`.',
  formula: 'gap variation / gauge diameter.',
  source: published(uncertainty),
  from: rated,
  of: ({ angle: limit, ...found }) =>
    judged({ value: angleOf(found.correction), limit, limitFrom: theRating }, found),
})

const unread = {
  read: 'The offset was not read, so this reading cannot show that the machine is aligned.',
  pilot: 'The offset was not read: the pilot holds the flanges together.',
} as const

function offsetRead(reading: Block, lookup: Lookup) {
  const found = corrected(reading, lookup)
  if (!found.ok) return found
  const { offset, offsetBasis } = found.value.correction
  const words = offsetBasis === 'pilot' ? unread.pilot : unread.read
  return offset
    ? ok({ ...found.value, correction: { ...found.value.correction, offset } })
    : failed({ type: 'offset-not-read', words })
}

const offset = figure({
  id: 'alignment/offset',
  on: 'reading',
  title: 'Offset',
  kind: 'length',
  doc: 'The distance between the axes at the faces, counted from the target where there is one.',
  formula:
    'offset at an angle = offset up × cos + offset to starboard × sin, fitted to all places by least squares.',
  source: published(uncertainty),
  from: offsetRead,
  of: (found) => judged(found.correction.offset, found),
})

const offsetPart = figure({
  id: 'alignment/offset-part',
  on: 'reading',
  title: 'Machine flange',
  kind: 'length',
  doc: 'Where the machine flange is, as read: vertical + up, horizontal + to starboard.',
  formula:
    'offset at an angle = offset up × cos + offset to starboard × sin, fitted to all places by least squares.',
  source: published(uncertainty),
  keys: ['plane'],
  from: offsetRead,
  of: (found) => inPlanes(found.correction.offset.parts, found),
})

const slope = figure({
  id: 'alignment/slope',
  on: 'reading',
  title: 'Slope',
  kind: 'angle',
  unit: 'mrad',
  doc: 'How the machine leans, going forward: vertical + up, horizontal + to starboard.',
  formula: fitted,
  source: published(uncertainty),
  keys: ['plane'],
  from: corrected,
  of: (found) => inPlanes(found.correction.slope, found),
})

/** What was found in the job that the plan gives no steps beside. */
function awaited(reading: Block, lookup: Lookup, ground: Ground): string | undefined {
  const trusted = trustedOn(reading, lookup, ground)
  if (!trusted.ok) return undefined
  const { errors = [], findings = [] } = trusted.value
  const all = [...errors, ...findings].map(({ check, place }) => `${check} at ${place}`)
  return all.length === 0 ? undefined : `the plan gives no steps because of ${listed(all)}`
}

function feetCorrected(reading: Block, lookup: Lookup, ground: Ground) {
  const found = corrected(reading, lookup)
  if (!found.ok) return found
  const { correction } = found.value
  if (correction.feetFault) return failed(correction.feetFault)
  const doubt = found.value.doubt ?? outdated(correction) ?? awaited(reading, lookup, ground)
  return ok<Corrected>({ correction, ...(doubt !== undefined && { doubt }) })
}

/** What each foot has to do in a plane. */
const footFigure = (
  plane: 'vertical' | 'horizontal',
  given: { readonly id: string; readonly title: string; readonly doc: string },
) =>
  figureOnceChecked({
    ...given,
    on: 'reading',
    kind: 'length',
    formula: footFormula,
    source: published(uncertainty),
    keys: ['foot'],
    from: feetCorrected,
    of: ({ correction, doubt }) =>
      correction.feet.map(
        (foot): Amount => ({
          ...uncertain(foot[plane]),
          ...(doubt !== undefined && { doubt }),
          key: { foot: foot.name },
          assumptions: correction.assumptions,
        }),
      ),
  })

const footHeight = footFigure('vertical', {
  id: 'alignment/foot-height',
  title: 'Correction in height',
  doc: 'How far the foot has to go in height, + up. The steps that come nearest to it are in the plan.',
})

const footSideways = footFigure('horizontal', {
  id: 'alignment/foot-sideways',
  title: 'Correction sideways',
  doc: 'How far the foot has to go sideways, + to starboard.',
})

const closed = (of: string, closure: Closure | undefined): readonly Amount[] =>
  !closure || closure.state === 'untestable'
    ? []
    : [
        {
          value: withoutNoise(closure.difference),
          limit: { high: closure.allowed },
          limitFrom: 'two gauge steps',
          key: { of },
        },
      ]

const closure = figure({
  id: 'alignment/closure',
  on: 'reading',
  title: 'Closing error',
  kind: 'length',
  doc: 'By how much the four values that agree least differ: top + bottom against the sum of the sides.',
  formula: 'sum of one opposite pair - sum of the other; at other angles in the same measure.',
  source: published('Bloch & Geitner, Machinery Component Maintenance and Repair: within two gauge steps'),
  keys: ['of'],
  from: correctionOf,
  of: (correction) => [...closed('gaps', correction.closure), ...closed('offsets', correction.rimClosure)],
})

const lift = figureWhereKnown({
  id: 'alignment/foot-lift',
  on: 'reading',
  title: 'Lift when slackened',
  kind: 'length',
  doc: 'How far the foot rose when its own fastening alone was slackened. A foot that rises more than the limit is soft.',
  source: published('general industry alignment tolerance table: 0.06 mm at any speed'),
  keys: ['foot'],
  from: (reading) => factOf(reading, 'reading.lifts')?.value,
  of: (lifts) =>
    lifts.map((foot) => ({ value: foot.lift, limit: { high: softLimit }, key: { foot: foot.name } })),
})

const runOut = figure({
  id: 'alignment/run-out',
  on: 'reading',
  title: 'Run-out',
  kind: 'length',
  doc: 'What turned with the flange, total indicator reading: of the face or of the rim. Known where the flange was turned.',
  formula:
    'face: diameter × half the difference of the slopes in both positions of the flange; rim: the difference of the offsets.',
  source: published(
    'mean over positions of the flange, US Army TM 55-1905-220-14 (in principle); two positions derived',
  ),
  keys: ['of'],
  from: corrected,
  of: ({ correction: { runOut = {} } }) =>
    (['face', 'rim'] as const).flatMap((of) => {
      const found = runOut[of]
      return found ? [{ ...uncertain(found), key: { of } }] : []
    }),
})

export const readingFigures = [
  gapVariation,
  offset,
  offsetPart,
  slope,
  angle,
  ratedOffset,
  footHeight,
  footSideways,
  closure,
  runOut,
  lift,
]
