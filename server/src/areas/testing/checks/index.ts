// Made by `npm run generate` from the files beside it.

import type { Check } from '../../../checks/check.ts'
import sensorAboveClass from './sensor/above-class.ts'
import sensorBeyondRange from './sensor/beyond-range.ts'
import sensorCurveContradicts from './sensor/curve-contradicts.ts'
import sensorDeratingRises from './sensor/derating-rises.ts'
import sensorFactOfAnotherKind from './sensor/fact-of-another-kind.ts'
import sensorLeadsMislead from './sensor/leads-mislead.ts'
import sensorNone from './sensor/none.ts'
import sensorNotRead from './sensor/not-read.ts'
import sensorOutOfOrder from './sensor/out-of-order.ts'
import testBeyondPermitted from './test/beyond-permitted.ts'
import testCoupled from './test/coupled.ts'
import testDatedInFuture from './test/dated-in-future.ts'
import testDischargeDiffers from './test/discharge-differs.ts'
import testInsulationLow from './test/insulation-low.ts'
import testInsulationUnknown from './test/insulation-unknown.ts'
import testInsulationVoltage from './test/insulation-voltage.ts'
import testLimitMissing from './test/limit-missing.ts'
import testMissing from './test/missing.ts'
import testPermittedUnfit from './test/permitted-unfit.ts'
import testPhasesIncomplete from './test/phases-incomplete.ts'
import testPolarisationIndexLow from './test/polarisation-index-low.ts'
import testPowerBeforeInsulation from './test/power-before-insulation.ts'
import testPrechargeDiffers from './test/precharge-differs.ts'
import testPrechargeIncomplete from './test/precharge-incomplete.ts'
import testRotationDiffers from './test/rotation-differs.ts'
import testSensorImplausible from './test/sensor-implausible.ts'
import testStillCharged from './test/still-charged.ts'
import testUnbalanced from './test/unbalanced.ts'
import testWrongPart from './test/wrong-part.ts'

export const checks: readonly Check[] = [
  sensorAboveClass,
  sensorBeyondRange,
  sensorCurveContradicts,
  sensorDeratingRises,
  sensorFactOfAnotherKind,
  sensorLeadsMislead,
  sensorNone,
  sensorNotRead,
  sensorOutOfOrder,
  testBeyondPermitted,
  testCoupled,
  testDatedInFuture,
  testDischargeDiffers,
  testInsulationLow,
  testInsulationUnknown,
  testInsulationVoltage,
  testLimitMissing,
  testMissing,
  testPermittedUnfit,
  testPhasesIncomplete,
  testPolarisationIndexLow,
  testPowerBeforeInsulation,
  testPrechargeDiffers,
  testPrechargeIncomplete,
  testRotationDiffers,
  testSensorImplausible,
  testStillCharged,
  testUnbalanced,
  testWrongPart,
]
