import type { Block } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { energyOfFile } from './energy.ts'
import { powerOfFile } from './power.ts'

/** What follows from the whole file, for whoever asks from one of its blocks. */
export const powerPlan = plan((_: Block, lookup: Lookup) => lookup.ofFile(powerOfFile))
export const energyPlan = plan((_: Block, lookup: Lookup) => lookup.ofFile(energyOfFile))
