import type { Command } from './command.ts'

export const showLog: Command = { id: 'shaftwright.showLog', run: (server) => server.showLog() }
