import type { Area } from '../common/area.ts'
import { checks } from './checks/index.ts'
import { figures } from './figures.ts'

export const caution: Area = {
  name: 'caution',
  title: 'What is dangerous',
  page: 'engineering.md',
  checks,
  figures,
  views: [],
}
