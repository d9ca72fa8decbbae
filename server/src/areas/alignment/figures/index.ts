import type { Figure } from '../../common/figure.ts'
import { moveFigures, stiffFigures } from './move.ts'
import { readingFigures } from './reading.ts'
import { stepFigures } from './step.ts'

export const figures: readonly Figure[] = [...readingFigures, ...stepFigures, ...moveFigures, ...stiffFigures]
