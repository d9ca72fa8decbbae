import { plausibleAlignment } from './plausible-alignment.ts'
import { plausiblePower } from './plausible-power.ts'
import { plausibleShaft } from './plausible-shaft.ts'
import type { Relation } from './relation.ts'

/** Rules between facts that no real install breaks. Bounds are far outside what is built. */
export const plausible: readonly Relation[] = [...plausibleShaft, ...plausibleAlignment, ...plausiblePower]
