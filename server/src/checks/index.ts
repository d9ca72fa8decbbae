// Made by `npm run generate` from the files beside it.

import alignmentAfloatBeforeLaunch from './alignment/afloat-before-launch.ts'
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
import alignmentLimitAboveUsual from './alignment/limit-above-usual.ts'
import alignmentMisalignmentBeyondCoupling from './alignment/misalignment-beyond-coupling.ts'
import alignmentMoveAfterUnknownReading from './alignment/move-after-unknown-reading.ts'
import alignmentMoveBeyondRoom from './alignment/move-beyond-room.ts'
import alignmentMoveByNutsNotThere from './alignment/move-by-nuts-not-there.ts'
import alignmentMoveHadAnotherEffect from './alignment/move-had-another-effect.ts'
import alignmentMoveMisdated from './alignment/move-misdated.ts'
import alignmentMoveNotDated from './alignment/move-not-dated.ts'
import alignmentMoveNotedTwice from './alignment/move-noted-twice.ts'
import alignmentMoveOfUnknownFoot from './alignment/move-of-unknown-foot.ts'
import alignmentMovePlanned from './alignment/move-planned.ts'
import alignmentMoveWithoutFeet from './alignment/move-without-feet.ts'
import alignmentNoReadingAfterMove from './alignment/no-reading-after-move.ts'
import alignmentNoReadingWithin from './alignment/no-reading-within.ts'
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
import alignmentTooManyFeet from './alignment/too-many-feet.ts'
import batteryNominalOutsideWindow from './battery/nominal-outside-window.ts'
import cableBatteryNotDc from './cable/battery-not-dc.ts'
import cableBatteryToMotor from './cable/battery-to-motor.ts'
import cableBelowSmallest from './cable/below-smallest.ts'
import cableControllerInputOutside from './cable/controller-input-outside.ts'
import cableCurrentUnknown from './cable/current-unknown.ts'
import cableJoinsItself from './cable/joins-itself.ts'
import cableMissing from './cable/missing.ts'
import cableUndersized from './cable/undersized.ts'
import cableVoltageDrop from './cable/voltage-drop.ts'
import cautionHeavyMachine from './caution/heavy-machine.ts'
import cautionLiveVoltage from './caution/live-voltage.ts'
import cautionOpenHull from './caution/open-hull.ts'
import cautionShortCircuit from './caution/short-circuit.ts'
import cautionStoredCharge from './caution/stored-charge.ts'
import cautionTurningShaft from './caution/turning-shaft.ts'
import type { Check } from './check.ts'
import jobAmountsCannotCombine from './job/amounts-cannot-combine.ts'
import jobAsBuiltWithErrors from './job/as-built-with-errors.ts'
import jobBlockAdded from './job/block-added.ts'
import jobBlockMisplaced from './job/block-misplaced.ts'
import jobBlockMissing from './job/block-missing.ts'
import jobBlockNotClosed from './job/block-not-closed.ts'
import jobBlockNotOpened from './job/block-not-opened.ts'
import jobBlockUnknown from './job/block-unknown.ts'
import jobBracketNotClosed from './job/bracket-not-closed.ts'
import jobChainTooLong from './job/chain-too-long.ts'
import jobClosingWithoutBlock from './job/closing-without-block.ts'
import jobCommaUnclear from './job/comma-unclear.ts'
import jobConcessionExpired from './job/concession-expired.ts'
import jobConcessionUnknownCheck from './job/concession-unknown-check.ts'
import jobConcessionUnused from './job/concession-unused.ts'
import jobConcessionWithoutReason from './job/concession-without-reason.ts'
import jobCurlyQuotes from './job/curly-quotes.ts'
import jobDashForMinus from './job/dash-for-minus.ts'
import jobDateImpossible from './job/date-impossible.ts'
import jobDecimalComma from './job/decimal-comma.ts'
import jobDividedByZero from './job/divided-by-zero.ts'
import jobDriveTooLarge from './job/drive-too-large.ts'
import jobDuplicate from './job/duplicate.ts'
import jobFactAssumed from './job/fact-assumed.ts'
import jobFactMissing from './job/fact-missing.ts'
import jobFactUnknown from './job/fact-unknown.ts'
import jobFactsContradict from './job/facts-contradict.ts'
import jobFactsImplausible from './job/facts-implausible.ts'
import jobFileLoop from './job/file-loop.ts'
import jobFileNotFound from './job/file-not-found.ts'
import jobFileNotUtf8 from './job/file-not-utf8.ts'
import jobFileOutside from './job/file-outside.ts'
import jobFileTooLarge from './job/file-too-large.ts'
import jobFileUnreadable from './job/file-unreadable.ts'
import jobFitUnknown from './job/fit-unknown.ts'
import jobGaugeUnknown from './job/gauge-unknown.ts'
import jobHeadingUnclear from './job/heading-unclear.ts'
import jobJobMissing from './job/job-missing.ts'
import jobLineNotUnderstood from './job/line-not-understood.ts'
import jobListTooLong from './job/list-too-long.ts'
import jobMeasuredInFuture from './job/measured-in-future.ts'
import jobMergeConflict from './job/merge-conflict.ts'
import jobMinusTouches from './job/minus-touches.ts'
import jobNestedTooDeep from './job/nested-too-deep.ts'
import jobNotTaken from './job/not-taken.ts'
import jobNumberUnreadable from './job/number-unreadable.ts'
import jobOperandMissing from './job/operand-missing.ts'
import jobPointUnclear from './job/point-unclear.ts'
import jobRatioRead from './job/ratio-read.ts'
import jobRatioUnclear from './job/ratio-unclear.ts'
import jobRecordLike from './job/record-like.ts'
import jobRefersToItself from './job/refers-to-itself.ts'
import jobSignTouches from './job/sign-touches.ts'
import jobSourceUnread from './job/source-unread.ts'
import jobTextNotClosed from './job/text-not-closed.ts'
import jobThousandsSeparator from './job/thousands-separator.ts'
import jobUnitMissing from './job/unit-missing.ts'
import jobUnitUnknown from './job/unit-unknown.ts'
import jobUnitWrongKind from './job/unit-wrong-kind.ts'
import jobUnreadable from './job/unreadable.ts'
import jobUnresolved from './job/unresolved.ts'
import jobValueNotAllowed from './job/value-not-allowed.ts'
import jobValueOutside from './job/value-outside.ts'
import jobValueQuoted from './job/value-quoted.ts'
import phasesControllerTerminalTwice from './phases/controller-terminal-twice.ts'
import phasesDoubled from './phases/doubled.ts'
import phasesIncomplete from './phases/incomplete.ts'
import phasesMotorTerminalTwice from './phases/motor-terminal-twice.ts'
import phasesNotCompared from './phases/not-compared.ts'
import phasesUnknownTerminal from './phases/unknown-terminal.ts'
import protectionAboveCable from './protection/above-cable.ts'
import protectionBelowLoad from './protection/below-load.ts'
import protectionCannotOpen from './protection/cannot-open.ts'
import protectionFarFromSource from './protection/far-from-source.ts'
import protectionInterruptsTooLittle from './protection/interrupts-too-little.ts'
import protectionInterruptsUnknown from './protection/interrupts-unknown.ts'
import protectionNone from './protection/none.ts'
import protectionVoltageBelow from './protection/voltage-below.ts'
import sealCompressionOutside from './seal/compression-outside.ts'
import sealShaftSizeDiffers from './seal/shaft-size-differs.ts'

export const allChecks: readonly Check[] = [
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
  batteryNominalOutsideWindow,
  cableBatteryNotDc,
  cableBatteryToMotor,
  cableBelowSmallest,
  cableControllerInputOutside,
  cableCurrentUnknown,
  cableJoinsItself,
  cableMissing,
  cableUndersized,
  cableVoltageDrop,
  cautionHeavyMachine,
  cautionLiveVoltage,
  cautionOpenHull,
  cautionShortCircuit,
  cautionStoredCharge,
  cautionTurningShaft,
  jobAmountsCannotCombine,
  jobAsBuiltWithErrors,
  jobBlockAdded,
  jobBlockMisplaced,
  jobBlockMissing,
  jobBlockNotClosed,
  jobBlockNotOpened,
  jobBlockUnknown,
  jobBracketNotClosed,
  jobChainTooLong,
  jobClosingWithoutBlock,
  jobCommaUnclear,
  jobConcessionExpired,
  jobConcessionUnknownCheck,
  jobConcessionUnused,
  jobConcessionWithoutReason,
  jobCurlyQuotes,
  jobDashForMinus,
  jobDateImpossible,
  jobDecimalComma,
  jobDividedByZero,
  jobDriveTooLarge,
  jobDuplicate,
  jobFactAssumed,
  jobFactMissing,
  jobFactUnknown,
  jobFactsContradict,
  jobFactsImplausible,
  jobFileLoop,
  jobFileNotFound,
  jobFileNotUtf8,
  jobFileOutside,
  jobFileTooLarge,
  jobFileUnreadable,
  jobFitUnknown,
  jobGaugeUnknown,
  jobHeadingUnclear,
  jobJobMissing,
  jobLineNotUnderstood,
  jobListTooLong,
  jobMeasuredInFuture,
  jobMergeConflict,
  jobMinusTouches,
  jobNestedTooDeep,
  jobNotTaken,
  jobNumberUnreadable,
  jobOperandMissing,
  jobPointUnclear,
  jobRatioRead,
  jobRatioUnclear,
  jobRecordLike,
  jobRefersToItself,
  jobSignTouches,
  jobSourceUnread,
  jobTextNotClosed,
  jobThousandsSeparator,
  jobUnitMissing,
  jobUnitUnknown,
  jobUnitWrongKind,
  jobUnreadable,
  jobUnresolved,
  jobValueNotAllowed,
  jobValueOutside,
  jobValueQuoted,
  phasesControllerTerminalTwice,
  phasesDoubled,
  phasesIncomplete,
  phasesMotorTerminalTwice,
  phasesNotCompared,
  phasesUnknownTerminal,
  protectionAboveCable,
  protectionBelowLoad,
  protectionCannotOpen,
  protectionFarFromSource,
  protectionInterruptsTooLittle,
  protectionInterruptsUnknown,
  protectionNone,
  protectionVoltageBelow,
  sealCompressionOutside,
  sealShaftSizeDiffers,
]
