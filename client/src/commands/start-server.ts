import type { Command } from './command.ts'

export const startServer: Command = { id: 'shaftwright.startServer', run: (server) => server.start() }
