import { Uri } from 'vscode'
import type { Command } from './command.ts'

export const showPlan: Command = {
  id: 'shaftwright.showPlan',
  run: (server, job) => server.showPlan(job instanceof Uri ? job : undefined),
}
