import { published } from '../../../checks/check.ts'
import type { Block } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { type Amount, type Figure, figureOnceChecked } from '../../common/figure.ts'
import { ok } from '../../common/outcome.ts'
import type { Ground } from '../../common/view.ts'
import { trustedOn } from '../plan-trust.ts'
import { type Correction, correctionOf } from '../plans/correction.ts'
import type { Predicted } from '../plans/foot-correction-plan.ts'
import { formatStep } from '../plans/foot-words.ts'
import type { CorrectedFoot } from '../plans/steps.ts'
import { uncertain, withoutNoise } from './amounts.ts'

/** The steps of a plan, and what they lead to. */
interface Planned {
  readonly correction: Correction
  readonly predicted: Predicted
  readonly assumptions: readonly string[]
}

/** Undefined where the plan gives no steps. Most readings of a log are answered before all findings are looked through. */
function stepsFrom(reading: Block, lookup: Lookup, ground: Ground): Planned | undefined {
  const found = correctionOf(reading, lookup)
  if (!found.ok || found.value.verdict === 'within') return undefined
  if (found.value.movedSince || found.value.laterReading !== undefined) return undefined
  const trusted = trustedOn(reading, lookup, ground)
  if (!trusted.ok) return undefined
  const correction = trusted.value
  const { withheld, predicted, assumptions, stepAssumptions } = correction
  return withheld || !predicted
    ? undefined
    : { correction, predicted, assumptions: [...assumptions, ...stepAssumptions] }
}

type Given = Omit<Parameters<typeof figureOnceChecked<Planned>>[0], 'from' | 'of' | 'on' | 'source'>

const ofPlan = (
  given: Given & Pick<Figure, 'source'>,
  of: (planned: Planned, lookup: Lookup) => readonly Amount[],
): Figure =>
  figureOnceChecked({
    ...given,
    on: 'reading',
    from: (reading, lookup, ground) => ok(stepsFrom(reading, lookup, ground)),
    of: (planned, lookup) => planned && of(planned, lookup),
  })

const atFeet = (given: Given, ofFoot: (foot: CorrectedFoot) => number | undefined): Figure =>
  ofPlan(
    {
      ...given,
      source: published('geometry of a single-start thread and of a rigid machine'),
      keys: ['foot'],
    },
    ({ correction, assumptions }, lookup) =>
      correction.feet.flatMap((foot) => {
        const value = ofFoot(foot)
        return value === undefined
          ? []
          : [
              {
                value,
                from: formatStep(foot, correction, lookup.system),
                key: { foot: foot.name },
                assumptions,
              },
            ]
      }),
  )

const chosen = 'of all moves that the feet can make, those that bring the machine nearest to its target.'

const height = atFeet(
  {
    id: 'alignment/step-height',
    title: 'Step in height',
    kind: 'length',
    doc: 'How far the plan moves the foot in height, + up. Only where the plan gives steps.',
    formula: chosen,
  },
  ({ step, moved }) => (step.by === 'none' ? undefined : withoutNoise(moved)),
)

const turn = atFeet(
  {
    id: 'alignment/step-turn',
    title: 'Turn of the lower nut',
    kind: 'angle',
    unit: 'flat',
    doc: 'How far the plan turns the lower nut of the foot, + where that raises it. Only where the plan gives steps by nuts.',
    formula: 'step in height / pitch; six flats are one turn (lead of a single-start thread = pitch).',
  },
  ({ step }) => {
    if (step.by !== 'nut') return undefined
    const { direction, turns, flats } = step.move
    return (direction === 'down' ? -1 : 1) * 2 * Math.PI * (turns + flats / 6)
  },
)

const sideways = atFeet(
  {
    id: 'alignment/step-sideways',
    title: 'Step sideways',
    kind: 'length',
    doc: 'How far the plan slides the foot sideways, + to starboard. Only where the plan gives steps.',
    formula: chosen,
  },
  ({ step, slid }) => (step.by === 'none' ? undefined : withoutNoise(slid)),
)

const asPlanned = [
  'the steps are made exactly',
  'the next reading is taken with the same gauge at the same places',
]

const next = (given: Given, of: (planned: Planned) => readonly Amount[]): Figure =>
  ofPlan(
    {
      ...given,
      source: published('sum of independent errors, JCGM 100, 5.1.2; moves of a rigid machine: derived'),
    },
    (planned) =>
      of(planned).map((amount) => ({
        ...amount,
        value: withoutNoise(amount.value),
        assumptions: [...planned.assumptions, ...asPlanned],
      })),
  )

const asMoved = 'the position found, moved by the steps; U is the root sum of squares of both readings.'
const leftOver = 'what the steps leave of the way to the target.'

/** The plan says with both readings in mind whether the next can prove it. */
const notProvable = ({ provable }: Predicted): Pick<Amount, 'doubt'> =>
  provable ? {} : { doubt: 'it is not far enough within the limits for the next reading to prove it' }

const nextGapVariation = next(
  {
    id: 'alignment/next-gap-variation',
    title: 'Next gap variation',
    kind: 'length',
    doc: 'The gap variation that the next reading should show after the steps of the plan, counted from the target where there is one.',
    formula: 'gauge diameter × slope after the steps; U is the root sum of squares of both readings.',
  },
  ({ correction: { gapVariation, target }, predicted }) => [
    {
      // Of what is left to a target the plan states no U.
      ...(target ? { value: predicted.fromTarget.gapVariation } : uncertain(predicted.gapVariation)),
      limit: { high: gapVariation.limit },
      limitFrom: gapVariation.limitFrom,
      ...notProvable(predicted),
    },
  ],
)

const nextOffset = next(
  {
    id: 'alignment/next-offset',
    title: 'Next offset',
    kind: 'length',
    doc: 'The offset that the next reading should show after the steps of the plan, counted from the target where there is one.',
    formula: leftOver,
  },
  ({ correction: { offset }, predicted }) =>
    offset && predicted.fromTarget.offset !== undefined
      ? [
          {
            value: predicted.fromTarget.offset,
            limit: { high: offset.limit },
            limitFrom: offset.limitFrom,
            ...notProvable(predicted),
          },
        ]
      : [],
)

const planes = ['vertical', 'horizontal'] as const

const nextFlange = next(
  {
    id: 'alignment/next-offset-part',
    title: 'Next machine flange',
    kind: 'length',
    doc: 'Where the machine flange should be in the next reading, as read: vertical + up, horizontal + to starboard.',
    formula: asMoved,
    keys: ['plane'],
  },
  ({ predicted: { offset } }) =>
    offset ? planes.map((plane) => ({ ...uncertain(offset[plane]), key: { plane } })) : [],
)

const nextOpening = next(
  {
    id: 'alignment/next-opening',
    title: 'Next opening of the gap',
    kind: 'length',
    doc: 'How the gap should open in the next reading, as read: vertical is the gap at the top less that at the bottom, horizontal that at starboard less that at port.',
    formula: asMoved,
    keys: ['plane'],
  },
  ({ predicted: { opening } }) => planes.map((plane) => ({ ...uncertain(opening[plane]), key: { plane } })),
)

export const stepFigures = [height, turn, sideways, nextGapVariation, nextOffset, nextFlange, nextOpening]
