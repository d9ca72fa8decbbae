import type { AreaCommand } from '../../common/command.ts'
import { power } from './power.ts'

export const commands: readonly AreaCommand[] = [power]
