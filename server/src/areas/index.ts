import type { Check } from '../checks/check.ts'
import { checks as checksOfTheText } from '../checks/job/index.ts'
import { across } from './across/index.ts'
import { alignment } from './alignment/index.ts'
import { caution } from './caution/index.ts'
import type { Area } from './common/area.ts'
import type { Figure } from './common/figure.ts'
import type { View } from './common/view.ts'
import { electrical } from './electrical/index.ts'
import { propulsion } from './propulsion/index.ts'
import { seal } from './seal/index.ts'
import { testing } from './testing/index.ts'

/** In the order that their results are shown in. */
export const areas: readonly Area[] = [alignment, seal, electrical, propulsion, testing, caution, across]

/** Every check, in order of its id. */
export const allChecks: readonly Check[] = [
  ...checksOfTheText,
  ...areas.flatMap(({ checks }) => checks),
].toSorted((a, b) => (a.id < b.id ? -1 : 1))

export const allFigures: readonly Figure[] = areas.flatMap(({ figures }) => figures)

/** What is shown of the blocks of a kind, area by area. */
export const viewsOf = (kind: string): readonly View[] =>
  areas.flatMap(({ views }) => views.filter(({ on }) => on === kind))

/** The areas that work something out of the blocks of a kind. */
export const areasOf = (kind: string): readonly Area[] =>
  areas.filter(({ figures, views }) => [...figures, ...views].some(({ on }) => on === kind))
