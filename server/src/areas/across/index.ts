import type { Area } from '../common/area.ts'
import { checks } from './checks/index.ts'

export const across: Area = {
  name: 'across',
  title: 'Facts that must agree',
  page: 'plausible.md',
  checks,
  figures: [],
  views: [],
}
