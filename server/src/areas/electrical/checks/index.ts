// Made by `npm run generate` from the files beside it.

import type { Check } from '../../../checks/check.ts'
import batteryChargeCurrentBeyond from './battery/charge-current-beyond.ts'
import batteryChargeVoltageBeyond from './battery/charge-voltage-beyond.ts'
import batteryNoIsolator from './battery/no-isolator.ts'
import batteryNominalOutsideWindow from './battery/nominal-outside-window.ts'
import batteryPeakLoadBeyond from './battery/peak-load-beyond.ts'
import batteryRatedLoadBeyond from './battery/rated-load-beyond.ts'
import batterySeriesFaulty from './battery/series-faulty.ts'
import batterySeriesUnlike from './battery/series-unlike.ts'
import batterySideBySideUnlike from './battery/side-by-side-unlike.ts'
import cableAmbientTooHot from './cable/ambient-too-hot.ts'
import cableBatteryNotDc from './cable/battery-not-dc.ts'
import cableBatteryToMotor from './cable/battery-to-motor.ts'
import cableBehindLargeFuse from './cable/behind-large-fuse.ts'
import cableBelowSmallest from './cable/below-smallest.ts'
import cableBendTight from './cable/bend-tight.ts'
import cableControllerInputOutside from './cable/controller-input-outside.ts'
import cableCurrentUnknown from './cable/current-unknown.ts'
import cableInsulationInMachinerySpace from './cable/insulation-in-machinery-space.ts'
import cableJoinsItself from './cable/joins-itself.ts'
import cableLugMismatch from './cable/lug-mismatch.ts'
import cableMissing from './cable/missing.ts'
import cableNearSignal from './cable/near-signal.ts'
import cableNoneEndsHere from './cable/none-ends-here.ts'
import cablePhaseLengthsMissing from './cable/phase-lengths-missing.ts'
import cablePhasesUnequal from './cable/phases-unequal.ts'
import cablePoleAlone from './cable/pole-alone.ts'
import cableSeriesEnds from './cable/series-ends.ts'
import cableSeriesOrParallel from './cable/series-or-parallel.ts'
import cableShortCircuitHeat from './cable/short-circuit-heat.ts'
import cableSupportsFar from './cable/supports-far.ts'
import cableTerminalTemperature from './cable/terminal-temperature.ts'
import cableThreadUnknown from './cable/thread-unknown.ts'
import cableTooManyLugs from './cable/too-many-lugs.ts'
import cableTorqueMissing from './cable/torque-missing.ts'
import cableUndersized from './cable/undersized.ts'
import cableVoltageBelow from './cable/voltage-below.ts'
import cableVoltageDrop from './cable/voltage-drop.ts'
import controllerLimitBeyondBattery from './controller/limit-beyond-battery.ts'
import controllerLimitBeyondFuse from './controller/limit-beyond-fuse.ts'
import phasesControllerTerminalTwice from './phases/controller-terminal-twice.ts'
import phasesDirectionUnknown from './phases/direction-unknown.ts'
import phasesDoubled from './phases/doubled.ts'
import phasesIncomplete from './phases/incomplete.ts'
import phasesMarksUnlikeStandard from './phases/marks-unlike-standard.ts'
import phasesMotorTerminalTwice from './phases/motor-terminal-twice.ts'
import phasesNotCompared from './phases/not-compared.ts'
import phasesScrewsDisagree from './phases/screws-disagree.ts'
import phasesScrewsNotStated from './phases/screws-not-stated.ts'
import phasesSensorDisagrees from './phases/sensor-disagrees.ts'
import phasesTurnsBackward from './phases/turns-backward.ts'
import phasesUnknownTerminal from './phases/unknown-terminal.ts'
import prechargeAroundNothing from './precharge/around-nothing.ts'
import prechargeClosingSurge from './precharge/closing-surge.ts'
import prechargeEnergy from './precharge/energy.ts'
import prechargeNone from './precharge/none.ts'
import prechargePower from './precharge/power.ts'
import prechargeRepeatRate from './precharge/repeat-rate.ts'
import prechargeTime from './precharge/time.ts'
import protectionAboveCable from './protection/above-cable.ts'
import protectionBelowLoad from './protection/below-load.ts'
import protectionBeyondCable from './protection/beyond-cable.ts'
import protectionCannotOpen from './protection/cannot-open.ts'
import protectionClearsLate from './protection/clears-late.ts'
import protectionFarFromSource from './protection/far-from-source.ts'
import protectionInterruptsTooLittle from './protection/interrupts-too-little.ts'
import protectionInterruptsUnknown from './protection/interrupts-unknown.ts'
import protectionNone from './protection/none.ts'
import protectionNotSelective from './protection/not-selective.ts'
import protectionNowhere from './protection/nowhere.ts'
import protectionOpensAtPeak from './protection/opens-at-peak.ts'
import protectionPartialRange from './protection/partial-range.ts'
import protectionSelectiveWithItself from './protection/selective-with-itself.ts'
import protectionVoltageBelow from './protection/voltage-below.ts'
import supplyDrop from './supply/drop.ts'
import supplyImpossible from './supply/impossible.ts'
import supplyOtherVoltage from './supply/other-voltage.ts'
import supplyTooLow from './supply/too-low.ts'
import supplyTooLowAtPeak from './supply/too-low-at-peak.ts'
import switchInterruptsTooLittle from './switch/interrupts-too-little.ts'
import switchNotLockable from './switch/not-lockable.ts'
import switchOnePole from './switch/one-pole.ts'
import switchOverloaded from './switch/overloaded.ts'
import switchVoltageBelow from './switch/voltage-below.ts'

export const checks: readonly Check[] = [
  batteryChargeCurrentBeyond,
  batteryChargeVoltageBeyond,
  batteryNoIsolator,
  batteryNominalOutsideWindow,
  batteryPeakLoadBeyond,
  batteryRatedLoadBeyond,
  batterySeriesFaulty,
  batterySeriesUnlike,
  batterySideBySideUnlike,
  cableAmbientTooHot,
  cableBatteryNotDc,
  cableBatteryToMotor,
  cableBehindLargeFuse,
  cableBelowSmallest,
  cableBendTight,
  cableControllerInputOutside,
  cableCurrentUnknown,
  cableInsulationInMachinerySpace,
  cableJoinsItself,
  cableLugMismatch,
  cableMissing,
  cableNearSignal,
  cableNoneEndsHere,
  cablePhaseLengthsMissing,
  cablePhasesUnequal,
  cablePoleAlone,
  cableSeriesEnds,
  cableSeriesOrParallel,
  cableShortCircuitHeat,
  cableSupportsFar,
  cableTerminalTemperature,
  cableThreadUnknown,
  cableTooManyLugs,
  cableTorqueMissing,
  cableUndersized,
  cableVoltageBelow,
  cableVoltageDrop,
  controllerLimitBeyondBattery,
  controllerLimitBeyondFuse,
  phasesControllerTerminalTwice,
  phasesDirectionUnknown,
  phasesDoubled,
  phasesIncomplete,
  phasesMarksUnlikeStandard,
  phasesMotorTerminalTwice,
  phasesNotCompared,
  phasesScrewsDisagree,
  phasesScrewsNotStated,
  phasesSensorDisagrees,
  phasesTurnsBackward,
  phasesUnknownTerminal,
  prechargeAroundNothing,
  prechargeClosingSurge,
  prechargeEnergy,
  prechargeNone,
  prechargePower,
  prechargeRepeatRate,
  prechargeTime,
  protectionAboveCable,
  protectionBelowLoad,
  protectionBeyondCable,
  protectionCannotOpen,
  protectionClearsLate,
  protectionFarFromSource,
  protectionInterruptsTooLittle,
  protectionInterruptsUnknown,
  protectionNone,
  protectionNotSelective,
  protectionNowhere,
  protectionOpensAtPeak,
  protectionPartialRange,
  protectionSelectiveWithItself,
  protectionVoltageBelow,
  supplyDrop,
  supplyImpossible,
  supplyOtherVoltage,
  supplyTooLow,
  supplyTooLowAtPeak,
  switchInterruptsTooLittle,
  switchNotLockable,
  switchOnePole,
  switchOverloaded,
  switchVoltageBelow,
]
