import { commonPractice, published } from '../../../checks/check.ts'
import type { Block } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { figureWhereKnown } from '../../common/figure.ts'
import { outOfPlane } from '../plans/feet-out-of-plane.ts'
import { slidApart } from '../plans/feet-slid-apart.ts'
import { type Misfit, mostOff } from '../plans/misfit.ts'
import { effectOf } from '../plans/move-effect.ts'
import { isPlanned } from '../plans/moves.ts'
import { withoutNoise } from './amounts.ts'

const lead = 'a flat is pitch / 6 (lead of a single-start thread = pitch).'
const geometry = published('geometry of a single-start thread and of a rigid machine')

const effect = (move: Block, lookup: Lookup) => ({ ...effectOf(move, lookup), isPlanned: isPlanned(move) })

/** A move that does not say when it was done may not have been made. */
const plannedOnly = (isPlanned: boolean) =>
  isPlanned ? { doubt: 'only planned: the move has no `done`' } : {}

const height = figureWhereKnown({
  id: 'alignment/move-height',
  on: 'move',
  title: 'Moved in height',
  kind: 'length',
  doc: 'What the move did to the height of the foot, + up.',
  formula: lead,
  source: geometry,
  keys: ['foot'],
  from: effect,
  of: ({ feet, isPlanned }) =>
    feet.flatMap((foot) =>
      foot.height === undefined
        ? []
        : [{ value: foot.height, ...plannedOnly(isPlanned), key: { foot: foot.name } }],
    ),
})

const sideways = figureWhereKnown({
  id: 'alignment/move-sideways',
  on: 'move',
  title: 'Moved sideways',
  kind: 'length',
  doc: 'How far the move slid the foot sideways, + to starboard.',
  source: geometry,
  keys: ['foot'],
  from: effect,
  of: ({ feet, isPlanned }) =>
    feet.map((foot) => ({
      value: foot.starboard,
      ...plannedOnly(isPlanned),
      key: { foot: foot.name },
    })),
})

const slopeChange = figureWhereKnown({
  id: 'alignment/move-slope',
  on: 'move',
  title: 'Change of slope',
  kind: 'angle',
  unit: 'mrad',
  doc: 'What the move did to the slope of the machine, going forward: vertical + up, horizontal + to starboard.',
  formula: 'slope = the straight line through the heights of the feet, by least squares.',
  source: geometry,
  keys: ['plane'],
  from: effect,
  of: (move) =>
    move.slope &&
    (['vertical', 'horizontal'] as const).map((plane) => ({
      value: move.slope?.change[plane] ?? 0,
      ...plannedOnly(move.isPlanned),
      key: { plane },
    })),
})

const expected = figureWhereKnown({
  id: 'alignment/expected-gap-variation',
  on: 'move',
  title: 'Expected gap variation',
  kind: 'length',
  doc: 'What the gap variation should be after the move, from the reading before it: where it is the only move since, and there is no target.',
  formula: 'gauge diameter × slope after the move.',
  source: geometry,
  from: effect,
  of: ({ slope, isPlanned }) =>
    slope?.gapVariation === undefined ? undefined : { value: slope.gapVariation, ...plannedOnly(isPlanned) },
})

/** What one stiff machine could not do. */
const stiff = (given: {
  readonly id: string
  readonly title: string
  readonly doc: string
  readonly formula: string
  readonly limitFrom: string
  readonly from: (move: Block, lookup: Lookup) => Misfit | undefined
}) => {
  const { limitFrom, ...declared } = given
  return figureWhereKnown({
    ...declared,
    on: 'move',
    kind: 'length',
    source: commonPractice('geometry of a rigid machine; the limit: common practice, no source'),
    of: (misfit) => ({
      value: withoutNoise(mostOff(misfit)),
      limit: { high: misfit.limit },
      limitFrom,
      ...(misfit.moves.length > 1 && { from: `${misfit.moves.length} moves together` }),
    }),
  })
}

const outOfOnePlane = stiff({
  id: 'alignment/out-of-plane',
  title: 'Feet out of one plane',
  doc: 'The most that a foot stands off the plane through all feet after the move, with those before it since the last reading. A foot that is off hangs, or the machine bends.',
  formula: 'the plane through the heights of all feet, by least squares.',
  limitFrom: 'half a step of the nuts; without nuts, common practice',
  from: outOfPlane,
})

const apart = stiff({
  id: 'alignment/slid-apart',
  title: 'Feet slid apart',
  doc: 'The most that a foot, as the move says it slid sideways, is off the line that the other feet go to. A stiff machine goes sideways in a line.',
  formula: 'the straight line through the ways sideways of all feet, by least squares.',
  limitFrom: 'what a dial at each foot can show',
  from: slidApart,
})

export const stiffFigures = [outOfOnePlane, apart]

export const moveFigures = [height, sideways, slopeChange, expected]
