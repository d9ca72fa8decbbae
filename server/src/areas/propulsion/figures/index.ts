import type { Figure } from '../../common/figure.ts'
import { hullFigures } from './hull.ts'
import { otherFigures } from './others.ts'
import { pointFigures } from './point.ts'
import { propellerFigures } from './propeller.ts'

export const figures: readonly Figure[] = [
  ...hullFigures,
  ...pointFigures,
  ...propellerFigures,
  ...otherFigures,
]
