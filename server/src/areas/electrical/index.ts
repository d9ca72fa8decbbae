import type { Area } from '../common/area.ts'
import { checks } from './checks/index.ts'

export const electrical: Area = { name: 'electrical', checks }
