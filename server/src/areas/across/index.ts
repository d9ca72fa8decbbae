import type { Area } from '../common/area.ts'
import { checks } from './checks/index.ts'

export const across: Area = { name: 'across', checks }
