import type { Figure } from '../../common/figure.ts'
import { moveFigures } from './move.ts'
import { readingFigures } from './reading.ts'

export const figures: readonly Figure[] = [...readingFigures, ...moveFigures]
