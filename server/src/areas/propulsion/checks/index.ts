// Made by `npm run generate` from the files beside it.

import type { Check } from '../../../checks/check.ts'
import batteryCurrentBeyond from './battery/current-beyond.ts'
import batteryEnduranceShort from './battery/endurance-short.ts'
import batteryRangeShort from './battery/range-short.ts'
import couplingPeakTorqueBeyond from './coupling/peak-torque-beyond.ts'
import gearPeakTorqueBeyond from './gear/peak-torque-beyond.ts'
import gearSpeedBeyond from './gear/speed-beyond.ts'
import gearTorqueBeyond from './gear/torque-beyond.ts'
import hullAssumed from './hull/assumed.ts'
import hullDrivesTooWeak from './hull/drives-too-weak.ts'
import hullFrictionAlone from './hull/friction-alone.ts'
import hullPowerUnknown from './hull/power-unknown.ts'
import hullSpeedBeyondPoints from './hull/speed-beyond-points.ts'
import motorSpeedBeyond from './motor/speed-beyond.ts'
import motorTorqueBeyond from './motor/torque-beyond.ts'
import propellerCavitation from './propeller/cavitation.ts'
import propellerOutsideSeries from './propeller/outside-series.ts'
import propellerPowerNotAbsorbed from './propeller/power-not-absorbed.ts'
import propellerTooLarge from './propeller/too-large.ts'
import serviceEnergyUnknown from './service/energy-unknown.ts'

export const checks: readonly Check[] = [
  batteryCurrentBeyond,
  batteryEnduranceShort,
  batteryRangeShort,
  couplingPeakTorqueBeyond,
  gearPeakTorqueBeyond,
  gearSpeedBeyond,
  gearTorqueBeyond,
  hullAssumed,
  hullDrivesTooWeak,
  hullFrictionAlone,
  hullPowerUnknown,
  hullSpeedBeyondPoints,
  motorSpeedBeyond,
  motorTorqueBeyond,
  propellerCavitation,
  propellerOutsideSeries,
  propellerPowerNotAbsorbed,
  propellerTooLarge,
  serviceEnergyUnknown,
]
