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
]
