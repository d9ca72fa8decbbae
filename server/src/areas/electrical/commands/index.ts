import type { AreaCommand } from '../../common/command.ts'
import { network } from './network.ts'

export const commands: readonly AreaCommand[] = [network]
