// Made by `npm run generate` from the files beside it.

import type { Check } from '../../../checks/check.ts'
import alignmentAfloatBeforeLaunch from './afloat-before-launch.ts'
import alignmentAfloatNotSaid from './afloat-not-said.ts'
import alignmentBearingSmallerThanShaft from './bearing-smaller-than-shaft.ts'
import alignmentDatedInFuture from './dated-in-future.ts'
import alignmentFeetAtOnePlace from './feet-at-one-place.ts'
import alignmentFeetCannotSetSlope from './feet-cannot-set-slope.ts'
import alignmentFeetOnOneSide from './feet-on-one-side.ts'
import alignmentFeetOutOfPlane from './feet-out-of-plane.ts'
import alignmentFeetSlidApart from './feet-slid-apart.ts'
import alignmentFlangeSmallerThanShaft from './flange-smaller-than-shaft.ts'
import alignmentFootNameContradictsPlace from './foot-name-contradicts-place.ts'
import alignmentFootNameTaken from './foot-name-taken.ts'
import alignmentGapVariationOutside from './gap-variation-outside.ts'
import alignmentGapVariationUndecided from './gap-variation-undecided.ts'
import alignmentGapsImpossible from './gaps-impossible.ts'
import alignmentGaugeCoarserThanLimit from './gauge-coarser-than-limit.ts'
import alignmentGaugeDiameterBeyondFlange from './gauge-diameter-beyond-flange.ts'
import alignmentLiftOfUnknownFoot from './lift-of-unknown-foot.ts'
import alignmentLimitAboveUsual from './limit-above-usual.ts'
import alignmentMisalignmentBeyondCoupling from './misalignment-beyond-coupling.ts'
import alignmentMoveAfterUnknownReading from './move-after-unknown-reading.ts'
import alignmentMoveBeyondRoom from './move-beyond-room.ts'
import alignmentMoveByNutsNotThere from './move-by-nuts-not-there.ts'
import alignmentMoveHadAnotherEffect from './move-had-another-effect.ts'
import alignmentMoveMisdated from './move-misdated.ts'
import alignmentMoveNotDated from './move-not-dated.ts'
import alignmentMoveNotedTwice from './move-noted-twice.ts'
import alignmentMoveOfUnknownFoot from './move-of-unknown-foot.ts'
import alignmentMovePlanned from './move-planned.ts'
import alignmentMoveWithoutFeet from './move-without-feet.ts'
import alignmentNoReadingAfterMove from './no-reading-after-move.ts'
import alignmentNoReadingWithin from './no-reading-within.ts'
import alignmentNothingRead from './nothing-read.ts'
import alignmentOffsetBesidePilot from './offset-beside-pilot.ts'
import alignmentOffsetNotMeasured from './offset-not-measured.ts'
import alignmentOffsetOutside from './offset-outside.ts'
import alignmentOffsetUndecided from './offset-undecided.ts'
import alignmentOffsetsDoNotClose from './offsets-do-not-close.ts'
import alignmentReadTooSoonAfterLaunch from './read-too-soon-after-launch.ts'
import alignmentReadTwice from './read-twice.ts'
import alignmentReadingsDoNotClose from './readings-do-not-close.ts'
import alignmentRepeatedReadingsDiffer from './repeated-readings-differ.ts'
import alignmentSoftFoot from './soft-foot.ts'
import alignmentThreadUnknown from './thread-unknown.ts'
import alignmentTooFewAngles from './too-few-angles.ts'
import alignmentTooManyFeet from './too-many-feet.ts'

export const checks: readonly Check[] = [
  alignmentAfloatBeforeLaunch,
  alignmentAfloatNotSaid,
  alignmentBearingSmallerThanShaft,
  alignmentDatedInFuture,
  alignmentFeetAtOnePlace,
  alignmentFeetCannotSetSlope,
  alignmentFeetOnOneSide,
  alignmentFeetOutOfPlane,
  alignmentFeetSlidApart,
  alignmentFlangeSmallerThanShaft,
  alignmentFootNameContradictsPlace,
  alignmentFootNameTaken,
  alignmentGapVariationOutside,
  alignmentGapVariationUndecided,
  alignmentGapsImpossible,
  alignmentGaugeCoarserThanLimit,
  alignmentGaugeDiameterBeyondFlange,
  alignmentLiftOfUnknownFoot,
  alignmentLimitAboveUsual,
  alignmentMisalignmentBeyondCoupling,
  alignmentMoveAfterUnknownReading,
  alignmentMoveBeyondRoom,
  alignmentMoveByNutsNotThere,
  alignmentMoveHadAnotherEffect,
  alignmentMoveMisdated,
  alignmentMoveNotDated,
  alignmentMoveNotedTwice,
  alignmentMoveOfUnknownFoot,
  alignmentMovePlanned,
  alignmentMoveWithoutFeet,
  alignmentNoReadingAfterMove,
  alignmentNoReadingWithin,
  alignmentNothingRead,
  alignmentOffsetBesidePilot,
  alignmentOffsetNotMeasured,
  alignmentOffsetOutside,
  alignmentOffsetUndecided,
  alignmentOffsetsDoNotClose,
  alignmentReadTooSoonAfterLaunch,
  alignmentReadTwice,
  alignmentReadingsDoNotClose,
  alignmentRepeatedReadingsDiffer,
  alignmentSoftFoot,
  alignmentThreadUnknown,
  alignmentTooFewAngles,
  alignmentTooManyFeet,
]
