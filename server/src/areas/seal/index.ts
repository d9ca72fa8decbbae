import type { Area } from '../common/area.ts'
import { checks } from './checks/index.ts'

export const seal: Area = { name: 'seal', checks }
