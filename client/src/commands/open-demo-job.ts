import type { DemoJob } from '../demo-job.ts'
import type { Command } from './command.ts'

export const openDemoJob = (demo: DemoJob): Command => ({
  id: 'shaftwright.openDemoJob',
  run: () => demo.show(),
})
