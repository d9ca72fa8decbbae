import { commands as alignment } from './alignment/commands/index.ts'
import type { AreaCommand } from './common/command.ts'
import { commands as electrical } from './electrical/commands/index.ts'
import { commands as propulsion } from './propulsion/commands/index.ts'

/** The commands that areas bring. They are not part of `Area`, which the editor imports: with them the whole of zod would get into the language
 * server, which is loaded at each start. */
export const areaCommands: readonly AreaCommand[] = [...alignment, ...electrical, ...propulsion]
