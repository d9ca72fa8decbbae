import type { Command } from './command.ts'

export const showPlan: Command = { id: 'shaftwright.showPlan', run: (server) => server.showPlan() }
