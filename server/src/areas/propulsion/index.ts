import type { Area } from '../common/area.ts'
import { checks } from './checks/index.ts'
import { figures } from './figures/index.ts'
import { views } from './views.ts'

export const propulsion: Area = {
  name: 'propulsion',
  title: 'Propeller, power and range',
  page: 'engineering/propulsion.md',
  checks,
  figures,
  views,
}
