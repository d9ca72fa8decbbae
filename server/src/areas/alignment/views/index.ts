import type { View } from '../../common/view.ts'
import { bed } from './bed.ts'
import { coupling } from './coupling.ts'
import { drive } from './drive.ts'
import { move } from './move.ts'
import { reading } from './reading.ts'

export const views: readonly View[] = [bed, coupling, drive, move, reading]
