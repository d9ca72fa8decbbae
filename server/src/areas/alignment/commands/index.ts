import type { AreaCommand } from '../../common/command.ts'
import { plan } from './plan.ts'

export const commands: readonly AreaCommand[] = [plan]
