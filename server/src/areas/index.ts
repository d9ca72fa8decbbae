import type { Check } from '../checks/check.ts'
import { checks as checksOfTheText } from '../checks/job/index.ts'
import { across } from './across/index.ts'
import { alignment } from './alignment/index.ts'
import { caution } from './caution/index.ts'
import type { Area } from './common/area.ts'
import { electrical } from './electrical/index.ts'
import { seal } from './seal/index.ts'

export const areas: readonly Area[] = [alignment, electrical, seal, caution, across]

/** Every check, in order of its id. */
export const allChecks: readonly Check[] = [
  ...checksOfTheText,
  ...areas.flatMap(({ checks }) => checks),
].toSorted((a, b) => (a.id < b.id ? -1 : 1))
