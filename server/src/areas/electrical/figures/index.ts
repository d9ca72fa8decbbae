import type { Figure } from '../../common/figure.ts'
import { batteryFigures } from './battery.ts'
import { cableFigures } from './cable.ts'
import { protectionFigures } from './protection.ts'

export const figures: readonly Figure[] = [...batteryFigures, ...cableFigures, ...protectionFigures]
