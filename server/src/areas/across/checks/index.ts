// Made by `npm run generate` from the files beside it.

import type { Check } from '../../../checks/check.ts'
import jobFactAssumed from './job/fact-assumed.ts'
import jobFactsContradict from './job/facts-contradict.ts'
import jobFactsImplausible from './job/facts-implausible.ts'

export const checks: readonly Check[] = [jobFactAssumed, jobFactsContradict, jobFactsImplausible]
