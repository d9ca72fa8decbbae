// Made by `npm run generate` from the files beside it.

import type { Check } from '../check.ts'
import jobAmountsCannotCombine from './amounts-cannot-combine.ts'
import jobAsBuiltWithErrors from './as-built-with-errors.ts'
import jobBlockAdded from './block-added.ts'
import jobBlockMisplaced from './block-misplaced.ts'
import jobBlockMissing from './block-missing.ts'
import jobBlockNotClosed from './block-not-closed.ts'
import jobBlockNotOpened from './block-not-opened.ts'
import jobBlockUnknown from './block-unknown.ts'
import jobBracketNotClosed from './bracket-not-closed.ts'
import jobChainTooLong from './chain-too-long.ts'
import jobClosingWithoutBlock from './closing-without-block.ts'
import jobCommaUnclear from './comma-unclear.ts'
import jobConcessionExpired from './concession-expired.ts'
import jobConcessionUnknownCheck from './concession-unknown-check.ts'
import jobConcessionUnused from './concession-unused.ts'
import jobConcessionWithoutReason from './concession-without-reason.ts'
import jobCurlyQuotes from './curly-quotes.ts'
import jobDashForMinus from './dash-for-minus.ts'
import jobDateImpossible from './date-impossible.ts'
import jobDecimalComma from './decimal-comma.ts'
import jobDividedByZero from './divided-by-zero.ts'
import jobDriveTooLarge from './drive-too-large.ts'
import jobDuplicate from './duplicate.ts'
import jobFactMissing from './fact-missing.ts'
import jobFactUnknown from './fact-unknown.ts'
import jobFileLoop from './file-loop.ts'
import jobFileNotFound from './file-not-found.ts'
import jobFileNotUtf8 from './file-not-utf8.ts'
import jobFileOutside from './file-outside.ts'
import jobFileTooLarge from './file-too-large.ts'
import jobFileUnreadable from './file-unreadable.ts'
import jobFitUnknown from './fit-unknown.ts'
import jobGaugeUnknown from './gauge-unknown.ts'
import jobHeadingUnclear from './heading-unclear.ts'
import jobJobMissing from './job-missing.ts'
import jobLineNotUnderstood from './line-not-understood.ts'
import jobListTooLong from './list-too-long.ts'
import jobMeasuredInFuture from './measured-in-future.ts'
import jobMergeConflict from './merge-conflict.ts'
import jobMinusTouches from './minus-touches.ts'
import jobNestedTooDeep from './nested-too-deep.ts'
import jobNotTaken from './not-taken.ts'
import jobNumberUnreadable from './number-unreadable.ts'
import jobOperandMissing from './operand-missing.ts'
import jobPointUnclear from './point-unclear.ts'
import jobRatioRead from './ratio-read.ts'
import jobRatioUnclear from './ratio-unclear.ts'
import jobRecordLike from './record-like.ts'
import jobRefersToItself from './refers-to-itself.ts'
import jobSignTouches from './sign-touches.ts'
import jobSourceUnread from './source-unread.ts'
import jobTextNotClosed from './text-not-closed.ts'
import jobThousandsSeparator from './thousands-separator.ts'
import jobUnitMissing from './unit-missing.ts'
import jobUnitUnknown from './unit-unknown.ts'
import jobUnitWrongKind from './unit-wrong-kind.ts'
import jobUnreadable from './unreadable.ts'
import jobUnresolved from './unresolved.ts'
import jobValueNotAllowed from './value-not-allowed.ts'
import jobValueOutside from './value-outside.ts'
import jobValueQuoted from './value-quoted.ts'

export const checks: readonly Check[] = [
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
  jobFactMissing,
  jobFactUnknown,
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
]
