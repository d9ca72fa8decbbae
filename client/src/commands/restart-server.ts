import type { Command } from './command.ts'

export const restartServer: Command = { id: 'shaftwright.restartServer', run: (server) => server.restart() }
