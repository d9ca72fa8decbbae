import { plausibleAlignment } from '../../checks/plausible-alignment.ts'
import type { Relation } from '../../checks/relation.ts'
import { plausibleMotor } from '../electrical/plausible-motor.ts'
import { plausiblePower } from '../electrical/plausible-power.ts'
import { plausibleShaft } from './plausible-shaft.ts'

/** Rules between facts that no real install breaks. Bounds are far outside what is built. */
export const plausible: readonly Relation[] = [
  ...plausibleShaft,
  ...plausibleAlignment,
  ...plausiblePower,
  ...plausibleMotor,
]
