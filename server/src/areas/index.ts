// Made by `npm run generate` from the files beside it.

import type { Check } from '../checks/check.ts'
import jobAmountsCannotCombine from '../checks/job/amounts-cannot-combine.ts'
import jobAsBuiltWithErrors from '../checks/job/as-built-with-errors.ts'
import jobBlockAdded from '../checks/job/block-added.ts'
import jobBlockMisplaced from '../checks/job/block-misplaced.ts'
import jobBlockMissing from '../checks/job/block-missing.ts'
import jobBlockNotClosed from '../checks/job/block-not-closed.ts'
import jobBlockNotOpened from '../checks/job/block-not-opened.ts'
import jobBlockUnknown from '../checks/job/block-unknown.ts'
import jobBracketNotClosed from '../checks/job/bracket-not-closed.ts'
import jobChainTooLong from '../checks/job/chain-too-long.ts'
import jobClosingWithoutBlock from '../checks/job/closing-without-block.ts'
import jobCommaUnclear from '../checks/job/comma-unclear.ts'
import jobConcessionExpired from '../checks/job/concession-expired.ts'
import jobConcessionUnknownCheck from '../checks/job/concession-unknown-check.ts'
import jobConcessionUnused from '../checks/job/concession-unused.ts'
import jobConcessionWithoutReason from '../checks/job/concession-without-reason.ts'
import jobCurlyQuotes from '../checks/job/curly-quotes.ts'
import jobDashForMinus from '../checks/job/dash-for-minus.ts'
import jobDateImpossible from '../checks/job/date-impossible.ts'
import jobDecimalComma from '../checks/job/decimal-comma.ts'
import jobDividedByZero from '../checks/job/divided-by-zero.ts'
import jobDriveTooLarge from '../checks/job/drive-too-large.ts'
import jobDuplicate from '../checks/job/duplicate.ts'
import jobFactMissing from '../checks/job/fact-missing.ts'
import jobFactUnknown from '../checks/job/fact-unknown.ts'
import jobFileLoop from '../checks/job/file-loop.ts'
import jobFileNotFound from '../checks/job/file-not-found.ts'
import jobFileNotUtf8 from '../checks/job/file-not-utf8.ts'
import jobFileOutside from '../checks/job/file-outside.ts'
import jobFileTooLarge from '../checks/job/file-too-large.ts'
import jobFileUnreadable from '../checks/job/file-unreadable.ts'
import jobFitUnknown from '../checks/job/fit-unknown.ts'
import jobGaugeUnknown from '../checks/job/gauge-unknown.ts'
import jobHeadingUnclear from '../checks/job/heading-unclear.ts'
import jobJobMissing from '../checks/job/job-missing.ts'
import jobLineNotUnderstood from '../checks/job/line-not-understood.ts'
import jobListTooLong from '../checks/job/list-too-long.ts'
import jobMeasuredInFuture from '../checks/job/measured-in-future.ts'
import jobMergeConflict from '../checks/job/merge-conflict.ts'
import jobMinusTouches from '../checks/job/minus-touches.ts'
import jobNestedTooDeep from '../checks/job/nested-too-deep.ts'
import jobNotTaken from '../checks/job/not-taken.ts'
import jobNumberUnreadable from '../checks/job/number-unreadable.ts'
import jobOperandMissing from '../checks/job/operand-missing.ts'
import jobPointUnclear from '../checks/job/point-unclear.ts'
import jobRatioRead from '../checks/job/ratio-read.ts'
import jobRatioUnclear from '../checks/job/ratio-unclear.ts'
import jobRecordLike from '../checks/job/record-like.ts'
import jobRefersToItself from '../checks/job/refers-to-itself.ts'
import jobSignTouches from '../checks/job/sign-touches.ts'
import jobSourceUnread from '../checks/job/source-unread.ts'
import jobTextNotClosed from '../checks/job/text-not-closed.ts'
import jobThousandsSeparator from '../checks/job/thousands-separator.ts'
import jobUnitMissing from '../checks/job/unit-missing.ts'
import jobUnitUnknown from '../checks/job/unit-unknown.ts'
import jobUnitWrongKind from '../checks/job/unit-wrong-kind.ts'
import jobUnreadable from '../checks/job/unreadable.ts'
import jobUnresolved from '../checks/job/unresolved.ts'
import jobValueNotAllowed from '../checks/job/value-not-allowed.ts'
import jobValueOutside from '../checks/job/value-outside.ts'
import jobValueQuoted from '../checks/job/value-quoted.ts'
import jobFactAssumed from './across/checks/job/fact-assumed.ts'
import jobFactsContradict from './across/checks/job/facts-contradict.ts'
import jobFactsImplausible from './across/checks/job/facts-implausible.ts'
import alignmentAfloatBeforeLaunch from './alignment/checks/afloat-before-launch.ts'
import alignmentAfloatNotSaid from './alignment/checks/afloat-not-said.ts'
import alignmentBearingSmallerThanShaft from './alignment/checks/bearing-smaller-than-shaft.ts'
import alignmentDatedInFuture from './alignment/checks/dated-in-future.ts'
import alignmentFeetAtOnePlace from './alignment/checks/feet-at-one-place.ts'
import alignmentFeetCannotSetSlope from './alignment/checks/feet-cannot-set-slope.ts'
import alignmentFeetOnOneSide from './alignment/checks/feet-on-one-side.ts'
import alignmentFeetOutOfPlane from './alignment/checks/feet-out-of-plane.ts'
import alignmentFeetSlidApart from './alignment/checks/feet-slid-apart.ts'
import alignmentFlangeSmallerThanShaft from './alignment/checks/flange-smaller-than-shaft.ts'
import alignmentFootNameContradictsPlace from './alignment/checks/foot-name-contradicts-place.ts'
import alignmentFootNameTaken from './alignment/checks/foot-name-taken.ts'
import alignmentGapVariationOutside from './alignment/checks/gap-variation-outside.ts'
import alignmentGapVariationUndecided from './alignment/checks/gap-variation-undecided.ts'
import alignmentGapsImpossible from './alignment/checks/gaps-impossible.ts'
import alignmentGaugeCoarserThanLimit from './alignment/checks/gauge-coarser-than-limit.ts'
import alignmentGaugeDiameterBeyondFlange from './alignment/checks/gauge-diameter-beyond-flange.ts'
import alignmentLiftOfUnknownFoot from './alignment/checks/lift-of-unknown-foot.ts'
import alignmentLimitAboveUsual from './alignment/checks/limit-above-usual.ts'
import alignmentMisalignmentBeyondCoupling from './alignment/checks/misalignment-beyond-coupling.ts'
import alignmentMoveAfterUnknownReading from './alignment/checks/move-after-unknown-reading.ts'
import alignmentMoveBeyondRoom from './alignment/checks/move-beyond-room.ts'
import alignmentMoveByNutsNotThere from './alignment/checks/move-by-nuts-not-there.ts'
import alignmentMoveHadAnotherEffect from './alignment/checks/move-had-another-effect.ts'
import alignmentMoveMisdated from './alignment/checks/move-misdated.ts'
import alignmentMoveNotDated from './alignment/checks/move-not-dated.ts'
import alignmentMoveNotedTwice from './alignment/checks/move-noted-twice.ts'
import alignmentMoveOfUnknownFoot from './alignment/checks/move-of-unknown-foot.ts'
import alignmentMovePlanned from './alignment/checks/move-planned.ts'
import alignmentMoveWithoutFeet from './alignment/checks/move-without-feet.ts'
import alignmentNoReadingAfterMove from './alignment/checks/no-reading-after-move.ts'
import alignmentNoReadingWithin from './alignment/checks/no-reading-within.ts'
import alignmentNothingRead from './alignment/checks/nothing-read.ts'
import alignmentOffsetBesidePilot from './alignment/checks/offset-beside-pilot.ts'
import alignmentOffsetNotMeasured from './alignment/checks/offset-not-measured.ts'
import alignmentOffsetOutside from './alignment/checks/offset-outside.ts'
import alignmentOffsetUndecided from './alignment/checks/offset-undecided.ts'
import alignmentOffsetsDoNotClose from './alignment/checks/offsets-do-not-close.ts'
import alignmentReadTooSoonAfterLaunch from './alignment/checks/read-too-soon-after-launch.ts'
import alignmentReadTwice from './alignment/checks/read-twice.ts'
import alignmentReadingsDoNotClose from './alignment/checks/readings-do-not-close.ts'
import alignmentRepeatedReadingsDiffer from './alignment/checks/repeated-readings-differ.ts'
import alignmentSoftFoot from './alignment/checks/soft-foot.ts'
import alignmentThreadUnknown from './alignment/checks/thread-unknown.ts'
import alignmentTooFewAngles from './alignment/checks/too-few-angles.ts'
import alignmentTooManyFeet from './alignment/checks/too-many-feet.ts'
import cautionHeavyMachine from './caution/checks/heavy-machine.ts'
import cautionLiveVoltage from './caution/checks/live-voltage.ts'
import cautionOpenHull from './caution/checks/open-hull.ts'
import cautionShortCircuit from './caution/checks/short-circuit.ts'
import cautionStoredCharge from './caution/checks/stored-charge.ts'
import cautionTurningShaft from './caution/checks/turning-shaft.ts'
import batteryNominalOutsideWindow from './electrical/checks/battery/nominal-outside-window.ts'
import cableBatteryNotDc from './electrical/checks/cable/battery-not-dc.ts'
import cableBatteryToMotor from './electrical/checks/cable/battery-to-motor.ts'
import cableBelowSmallest from './electrical/checks/cable/below-smallest.ts'
import cableControllerInputOutside from './electrical/checks/cable/controller-input-outside.ts'
import cableCurrentUnknown from './electrical/checks/cable/current-unknown.ts'
import cableJoinsItself from './electrical/checks/cable/joins-itself.ts'
import cableMissing from './electrical/checks/cable/missing.ts'
import cableUndersized from './electrical/checks/cable/undersized.ts'
import cableVoltageDrop from './electrical/checks/cable/voltage-drop.ts'
import phasesControllerTerminalTwice from './electrical/checks/phases/controller-terminal-twice.ts'
import phasesDoubled from './electrical/checks/phases/doubled.ts'
import phasesIncomplete from './electrical/checks/phases/incomplete.ts'
import phasesMotorTerminalTwice from './electrical/checks/phases/motor-terminal-twice.ts'
import phasesNotCompared from './electrical/checks/phases/not-compared.ts'
import phasesUnknownTerminal from './electrical/checks/phases/unknown-terminal.ts'
import protectionAboveCable from './electrical/checks/protection/above-cable.ts'
import protectionBelowLoad from './electrical/checks/protection/below-load.ts'
import protectionCannotOpen from './electrical/checks/protection/cannot-open.ts'
import protectionFarFromSource from './electrical/checks/protection/far-from-source.ts'
import protectionInterruptsTooLittle from './electrical/checks/protection/interrupts-too-little.ts'
import protectionInterruptsUnknown from './electrical/checks/protection/interrupts-unknown.ts'
import protectionNone from './electrical/checks/protection/none.ts'
import protectionVoltageBelow from './electrical/checks/protection/voltage-below.ts'
import sealCompressionOutside from './seal/checks/compression-outside.ts'
import sealShaftSizeDiffers from './seal/checks/shaft-size-differs.ts'

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
