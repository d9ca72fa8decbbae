import type { Area } from '../common/area.ts'
import { checks } from './checks/index.ts'
import { figures } from './figures.ts'
import { views } from './views.ts'

export const seal: Area = { name: 'seal', title: 'Seal', page: 'engineering.md', checks, figures, views }
