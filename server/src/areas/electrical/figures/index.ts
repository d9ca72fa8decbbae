import type { Figure } from '../../common/figure.ts'
import { batteryFigures } from './battery.ts'
import { cableFigures } from './cable.ts'
import { caseFigures } from './cases.ts'
import { controllerFigures } from './controller.ts'
import { phaseFigures } from './phases.ts'
import { prechargeFigures } from './precharge.ts'
import { protectionFigures } from './protection.ts'
import { supplyFigures } from './supply.ts'

export const figures: readonly Figure[] = [
  ...batteryFigures,
  ...cableFigures,
  ...caseFigures,
  ...controllerFigures,
  ...phaseFigures,
  ...prechargeFigures,
  ...protectionFigures,
  ...supplyFigures,
]
