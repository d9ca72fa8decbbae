import type { Area } from '../common/area.ts'
import { checks } from './checks/index.ts'
import { figures } from './figures/index.ts'
import { views } from './views.ts'

export const electrical: Area = {
  name: 'electrical',
  title: 'Batteries, cables and protection',
  page: 'engineering.md',
  checks,
  figures,
  views,
}
