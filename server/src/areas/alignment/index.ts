import type { Area } from '../common/area.ts'
import { checks } from './checks/index.ts'
import { figures } from './figures/index.ts'
import { views } from './views/index.ts'

export const alignment: Area = {
  name: 'alignment',
  title: 'Alignment',
  page: 'engineering/alignment.md',
  checks,
  figures,
  views,
}
