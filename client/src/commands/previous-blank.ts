import { blankBefore } from '../blanks.ts'
import { goToBlank } from '../go-to-blank.ts'
import type { Command } from './command.ts'

export const previousBlank: Command = {
  id: 'shaftwright.previousBlank',
  run: () => goToBlank((text, { start }) => blankBefore(text, start), 'outdent'),
}
