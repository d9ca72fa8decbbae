import type { Area } from '../common/area.ts'
import { checks } from './checks/index.ts'
import { figures } from './figures/index.ts'
import { views } from './views.ts'

export const testing: Area = {
  name: 'testing',
  title: 'Temperature sensors and tests',
  page: 'engineering/temperature-and-tests.md',
  checks,
  figures,
  views,
}
