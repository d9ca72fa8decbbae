// Made by `npm run generate` from the files beside it.

import alignmentAfloatNotSaid from './alignment/afloat-not-said.ts'
import alignmentBearingSmallerThanShaft from './alignment/bearing-smaller-than-shaft.ts'
import alignmentDatedInFuture from './alignment/dated-in-future.ts'
import alignmentFeetAtOnePlace from './alignment/feet-at-one-place.ts'
import alignmentFeetCannotSetSlope from './alignment/feet-cannot-set-slope.ts'
import alignmentFeetOnOneSide from './alignment/feet-on-one-side.ts'
import alignmentFeetOutOfPlane from './alignment/feet-out-of-plane.ts'
import alignmentFeetSlidApart from './alignment/feet-slid-apart.ts'
import alignmentFlangeSmallerThanShaft from './alignment/flange-smaller-than-shaft.ts'
import alignmentFootNameContradictsPlace from './alignment/foot-name-contradicts-place.ts'
import alignmentFootNameTaken from './alignment/foot-name-taken.ts'
import alignmentGapVariationOutside from './alignment/gap-variation-outside.ts'
import alignmentGapVariationUndecided from './alignment/gap-variation-undecided.ts'
import alignmentGapsImpossible from './alignment/gaps-impossible.ts'
import alignmentGaugeCoarserThanLimit from './alignment/gauge-coarser-than-limit.ts'
import alignmentGaugeDiameterBeyondFlange from './alignment/gauge-diameter-beyond-flange.ts'
import alignmentLiftOfUnknownFoot from './alignment/lift-of-unknown-foot.ts'
import alignmentMisalignmentBeyondCoupling from './alignment/misalignment-beyond-coupling.ts'
import alignmentMoveAfterUnknownReading from './alignment/move-after-unknown-reading.ts'
import alignmentMoveBeyondRoom from './alignment/move-beyond-room.ts'
import alignmentMoveByNutsNotThere from './alignment/move-by-nuts-not-there.ts'
import alignmentMoveHadAnotherEffect from './alignment/move-had-another-effect.ts'
import alignmentMoveMisdated from './alignment/move-misdated.ts'
import alignmentMoveNotedTwice from './alignment/move-noted-twice.ts'
import alignmentMoveOfUnknownFoot from './alignment/move-of-unknown-foot.ts'
import alignmentNeverRead from './alignment/never-read.ts'
import alignmentNoAfloatReading from './alignment/no-afloat-reading.ts'
import alignmentNoReadingAfterMove from './alignment/no-reading-after-move.ts'
import alignmentNothingRead from './alignment/nothing-read.ts'
import alignmentOffsetBesidePilot from './alignment/offset-beside-pilot.ts'
import alignmentOffsetNotMeasured from './alignment/offset-not-measured.ts'
import alignmentOffsetOutside from './alignment/offset-outside.ts'
import alignmentOffsetUndecided from './alignment/offset-undecided.ts'
import alignmentOffsetsDoNotClose from './alignment/offsets-do-not-close.ts'
import alignmentReadTooSoonAfterLaunch from './alignment/read-too-soon-after-launch.ts'
import alignmentReadTwice from './alignment/read-twice.ts'
import alignmentReadingsDoNotClose from './alignment/readings-do-not-close.ts'
import alignmentRepeatedReadingsDiffer from './alignment/repeated-readings-differ.ts'
import alignmentSoftFoot from './alignment/soft-foot.ts'
import alignmentThreadUnknown from './alignment/thread-unknown.ts'
import alignmentTooFewAngles from './alignment/too-few-angles.ts'
import cableBatteryNotDc from './cable/battery-not-dc.ts'
import cableBatteryToMotor from './cable/battery-to-motor.ts'
import cableControllerInputOutside from './cable/controller-input-outside.ts'
import cableCurrentUnknown from './cable/current-unknown.ts'
import cableJoinsItself from './cable/joins-itself.ts'
import cableNoTableRow from './cable/no-table-row.ts'
import cableUndersized from './cable/undersized.ts'
import cableVoltageDrop from './cable/voltage-drop.ts'
import type { Check } from './check.ts'
import jobAmountsCannotCombine from './job/amounts-cannot-combine.ts'
import jobAsBuiltWithErrors from './job/as-built-with-errors.ts'
import jobBlockMisplaced from './job/block-misplaced.ts'
import jobBlockMissing from './job/block-missing.ts'
import jobBlockNotClosed from './job/block-not-closed.ts'
import jobBlockUnknown from './job/block-unknown.ts'
import jobBracketNotClosed from './job/bracket-not-closed.ts'
import jobChainTooLong from './job/chain-too-long.ts'
import jobClosingWithoutBlock from './job/closing-without-block.ts'
import jobConcessionExpired from './job/concession-expired.ts'
import jobConcessionUnknownCheck from './job/concession-unknown-check.ts'
import jobConcessionUnused from './job/concession-unused.ts'
import jobConcessionWithoutReason from './job/concession-without-reason.ts'
import jobCurlyQuotes from './job/curly-quotes.ts'
import jobDateImpossible from './job/date-impossible.ts'
import jobDecimalComma from './job/decimal-comma.ts'
import jobDividedByZero from './job/divided-by-zero.ts'
import jobDuplicate from './job/duplicate.ts'
import jobFactMissing from './job/fact-missing.ts'
import jobFactUnknown from './job/fact-unknown.ts'
import jobFileLoop from './job/file-loop.ts'
import jobFileNotFound from './job/file-not-found.ts'
import jobFileOutside from './job/file-outside.ts'
import jobFitUnknown from './job/fit-unknown.ts'
import jobGaugeUnknown from './job/gauge-unknown.ts'
import jobHeadingUnclear from './job/heading-unclear.ts'
import jobLineNotUnderstood from './job/line-not-understood.ts'
import jobMergeConflict from './job/merge-conflict.ts'
import jobNestedTooDeep from './job/nested-too-deep.ts'
import jobNumberUnreadable from './job/number-unreadable.ts'
import jobOperandMissing from './job/operand-missing.ts'
import jobRefersToItself from './job/refers-to-itself.ts'
import jobSignTouches from './job/sign-touches.ts'
import jobSourceUnread from './job/source-unread.ts'
import jobTextNotClosed from './job/text-not-closed.ts'
import jobUnitMissing from './job/unit-missing.ts'
import jobUnitUnknown from './job/unit-unknown.ts'
import jobUnitWrongKind from './job/unit-wrong-kind.ts'
import jobUnreadable from './job/unreadable.ts'
import jobUnresolved from './job/unresolved.ts'
import jobValueEmpty from './job/value-empty.ts'
import jobValueNotAllowed from './job/value-not-allowed.ts'
import jobValueOutside from './job/value-outside.ts'
import phasesControllerTerminalTwice from './phases/controller-terminal-twice.ts'
import phasesDoubled from './phases/doubled.ts'
import phasesIncomplete from './phases/incomplete.ts'
import phasesMotorTerminalTwice from './phases/motor-terminal-twice.ts'
import phasesNotCompared from './phases/not-compared.ts'
import phasesUnknownTerminal from './phases/unknown-terminal.ts'
import protectionAboveCable from './protection/above-cable.ts'
import protectionBelowLoad from './protection/below-load.ts'
import protectionFarFromSource from './protection/far-from-source.ts'
import protectionInterruptsTooLittle from './protection/interrupts-too-little.ts'
import protectionInterruptsUnknown from './protection/interrupts-unknown.ts'
import protectionNone from './protection/none.ts'
import protectionVoltageBelow from './protection/voltage-below.ts'
import sealCompressionMissing from './seal/compression-missing.ts'
import sealCompressionOutside from './seal/compression-outside.ts'
import sealShaftSizeDiffers from './seal/shaft-size-differs.ts'

export const allChecks: readonly Check[] = [
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
  alignmentMisalignmentBeyondCoupling,
  alignmentMoveAfterUnknownReading,
  alignmentMoveBeyondRoom,
  alignmentMoveByNutsNotThere,
  alignmentMoveHadAnotherEffect,
  alignmentMoveMisdated,
  alignmentMoveNotedTwice,
  alignmentMoveOfUnknownFoot,
  alignmentNeverRead,
  alignmentNoAfloatReading,
  alignmentNoReadingAfterMove,
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
  cableBatteryNotDc,
  cableBatteryToMotor,
  cableControllerInputOutside,
  cableCurrentUnknown,
  cableJoinsItself,
  cableNoTableRow,
  cableUndersized,
  cableVoltageDrop,
  jobAmountsCannotCombine,
  jobAsBuiltWithErrors,
  jobBlockMisplaced,
  jobBlockMissing,
  jobBlockNotClosed,
  jobBlockUnknown,
  jobBracketNotClosed,
  jobChainTooLong,
  jobClosingWithoutBlock,
  jobConcessionExpired,
  jobConcessionUnknownCheck,
  jobConcessionUnused,
  jobConcessionWithoutReason,
  jobCurlyQuotes,
  jobDateImpossible,
  jobDecimalComma,
  jobDividedByZero,
  jobDuplicate,
  jobFactMissing,
  jobFactUnknown,
  jobFileLoop,
  jobFileNotFound,
  jobFileOutside,
  jobFitUnknown,
  jobGaugeUnknown,
  jobHeadingUnclear,
  jobLineNotUnderstood,
  jobMergeConflict,
  jobNestedTooDeep,
  jobNumberUnreadable,
  jobOperandMissing,
  jobRefersToItself,
  jobSignTouches,
  jobSourceUnread,
  jobTextNotClosed,
  jobUnitMissing,
  jobUnitUnknown,
  jobUnitWrongKind,
  jobUnreadable,
  jobUnresolved,
  jobValueEmpty,
  jobValueNotAllowed,
  jobValueOutside,
  phasesControllerTerminalTwice,
  phasesDoubled,
  phasesIncomplete,
  phasesMotorTerminalTwice,
  phasesNotCompared,
  phasesUnknownTerminal,
  protectionAboveCable,
  protectionBelowLoad,
  protectionFarFromSource,
  protectionInterruptsTooLittle,
  protectionInterruptsUnknown,
  protectionNone,
  protectionVoltageBelow,
  sealCompressionMissing,
  sealCompressionOutside,
  sealShaftSizeDiffers,
]
